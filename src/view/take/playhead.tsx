import { useEffect, useRef } from 'react'
import { useBench } from '../bench-context'
import styles from './take.module.css'
import { type TimeView, xOfFrame } from './time-view'

/** The line where the take plays. It moves without drawing anything else again. */
export function Playhead({ view, width }: { view: TimeView; width: number }) {
  const { listen } = useBench()
  const line = useRef<HTMLDivElement>(null)
  useEffect(() => {
    const place = (positionFrame: number) => {
      if (!line.current) return
      const x = xOfFrame(view, positionFrame, width)
      line.current.style.transform = `translateX(${x.toFixed(1)}px)`
      line.current.style.visibility = x >= 0 && x <= width ? 'visible' : 'hidden'
    }
    place(listen.getState().positionFrame)
    return listen.subscribe((now, before) => {
      if (now.positionFrame !== before.positionFrame) place(now.positionFrame)
    })
  }, [listen, view, width])
  return <div ref={line} className={styles.playhead} />
}
