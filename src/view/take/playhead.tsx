import { useEffect, useRef } from 'react'
import { useApp } from '../context/app-context'
import styles from './playhead.module.css'
import { isLeaving, xOfFrame } from './time/time-view'
import type { TimeViewControl } from './time/use-time-view'

/** A shorter view is not turned while the take plays, seconds: what changes more than three times a second flashes (WCAG 2.3.1). */
const LEAST_TURNED_SECONDS = 0.5

interface PlayheadProps {
  readonly time: TimeViewControl
  readonly width: number
  readonly sampleRate: number
}

/** The line where the take plays. It moves without drawing anything else again; the view turns like a page. */
export function Playhead({ time, width, sampleRate }: PlayheadProps) {
  const { listen } = useApp()
  const line = useRef<HTMLDivElement>(null)
  const { view, move } = time
  const leastTurnedFrames = LEAST_TURNED_SECONDS * sampleRate
  useEffect(() => {
    const place = (positionFrame: number) => {
      if (!line.current) return
      const x = xOfFrame(view, positionFrame, width)
      line.current.style.transform = `translateX(${x.toFixed(1)}px)`
      line.current.style.visibility = x >= 0 && x <= width ? 'visible' : 'hidden'
    }
    place(listen.getState().positionFrame)
    return listen.subscribe((now, before) => {
      if (now.positionFrame === before.positionFrame) return
      place(now.positionFrame)
      const turns = !now.playing || view.to - view.from >= leastTurnedFrames
      if (turns && isLeaving(view, before.positionFrame, now.positionFrame))
        move(now.positionFrame - view.from)
    })
  }, [listen, view, width, move, leastTurnedFrames])
  return <div ref={line} className={styles.playhead} />
}
