import { type KeyboardEvent, type RefObject, useEffect } from 'react'
import { frameCount, type Sound } from '../../core'
import { useBench, useListen } from '../bench-context'
import { LoopMark } from './loop-mark'
import { seekActionOf } from './seek-keys'
import styles from './take.module.css'
import { speakTime } from './time-text'
import { frameAtX } from './time-view'
import { useLoopDrag } from './use-loop-drag'
import type { TimeViewControl } from './use-time-view'

interface SeekSurfaceProps {
  readonly sound: Sound
  readonly time: TimeViewControl
  readonly width: number
  readonly surface: RefObject<HTMLDivElement | null>
}

/** Lies over all lanes: click to go somewhere, drag to choose a loop, and the same from the keyboard. */
export function SeekSurface({ sound, time, width, surface }: SeekSurfaceProps) {
  const { listening, listen } = useBench()
  const frames = frameCount(sound)
  const loop = useListen((state) => state.loop)
  // Told when it stands still only: a reader that speaks each tenth of a second helps nobody.
  const stoppedAt = useListen((state) => (state.playing ? null : state.positionFrame))
  const frameAt = (clientX: number) => {
    const left = surface.current?.getBoundingClientRect().left ?? 0
    return frameAtX(time.view, clientX - left, width, frames)
  }
  const { chosen, handlers } = useLoopDrag({
    loop,
    frameAt,
    framesPerPixel: (time.view.to - time.view.from) / Math.max(1, width),
    onClick: (frame) => listening.seek(frame),
    onLoop: (range) => listening.setLoop(range),
  })
  useZoomWheel(surface, time, frameAt)

  const press = (event: KeyboardEvent) => {
    const action = seekActionOf(event)
    if (!action) return
    event.preventDefault()
    const { positionFrame } = listen.getState()
    if (action.type === 'by') listening.seek(positionFrame + action.seconds * sound.sampleRate)
    else if (action.type === 'to') listening.seek(action.end === 'start' ? 0 : frames - 1)
    else if (action.type === 'zoom') time.zoom(action.factor, positionFrame)
    else time.showAll()
  }
  const seconds = (stoppedAt ?? 0) / sound.sampleRate
  return (
    <div
      ref={surface}
      className={styles.surface}
      role="slider"
      tabIndex={0}
      aria-label="Place in the take"
      aria-valuemin={0}
      aria-valuemax={Math.round(frames / sound.sampleRate)}
      aria-valuenow={Math.round(seconds)}
      aria-valuetext={stoppedAt === null ? 'playing' : speakTime(seconds)}
      onKeyDown={press}
      {...handlers}
    >
      <LoopMark range={chosen ?? loop} view={time.view} />
    </div>
  )
}

/** Ctrl and wheel, or a pinch on a touchpad, zooms about the pointer; sideways scrolling moves the view. */
function useZoomWheel(
  surface: RefObject<HTMLDivElement | null>,
  time: TimeViewControl,
  frameAt: (clientX: number) => number,
) {
  useEffect(() => {
    const element = surface.current
    if (!element) return
    const wheel = (event: WheelEvent) => {
      const sideways = event.shiftKey ? event.deltaY : event.deltaX
      if (event.ctrlKey || event.metaKey) {
        event.preventDefault()
        time.zoom(Math.exp(-event.deltaY / 300), frameAt(event.clientX))
      } else if (!time.isWhole && Math.abs(sideways) > Math.abs(event.shiftKey ? 0 : event.deltaY)) {
        event.preventDefault()
        time.move((sideways * (time.view.to - time.view.from)) / 1000)
      }
    }
    // Not passive, or the page would zoom as well.
    element.addEventListener('wheel', wheel, { passive: false })
    return () => element.removeEventListener('wheel', wheel)
  })
}
