import type { KeyboardEvent, RefObject } from 'react'
import { frameCount, type Sound } from '../../core'
import { SHORTEST_LOOP_SECONDS } from '../../session/listening/loop'
import { useApp, useListen } from '../context/app-context'
import { speakTime } from '../words/time-text'
import { LoopMark } from './loop/loop-mark'
import { useLoopDrag } from './loop/use-loop-drag'
import styles from './seek-surface.module.css'
import { seekActionOf } from './time/seek-keys'
import { frameAtX } from './time/time-view'
import { usePinch } from './time/use-pinch'
import type { TimeViewControl } from './time/use-time-view'
import { useZoomWheel } from './time/use-zoom-wheel'

interface SeekSurfaceProps {
  readonly sound: Sound
  readonly time: TimeViewControl
  readonly width: number
  readonly surface: RefObject<HTMLDivElement | null>
}

/** Lies over all lanes: click to go somewhere, drag to choose a loop, and the same from the keyboard. */
export function SeekSurface({ sound, time, width, surface }: SeekSurfaceProps) {
  const { listening, listen } = useApp()
  const frames = frameCount(sound)
  const loop = useListen((state) => state.loop)
  // Told when it stands still only: a reader that speaks each tenth of a second helps nobody.
  const stoppedAt = useListen((state) => (state.playing ? null : state.positionFrame))
  const frameAt = (clientX: number) => {
    const left = surface.current?.getBoundingClientRect().left ?? 0
    return frameAtX(time.view, clientX - left, width, frames)
  }
  const framesPerPixel = (time.view.to - time.view.from) / Math.max(1, width)
  const drag = useLoopDrag({
    loop,
    frameAt,
    framesPerPixel,
    bounds: { frames, shortest: Math.ceil(SHORTEST_LOOP_SECONDS * sound.sampleRate) },
    onClick: (frame) => listening.seek(frame),
    onLoop: (range) => listening.setLoop(range),
  })
  // What was beneath a finger stays beneath it.
  const pinch = usePinch(({ factor, centreX, shiftX }) => {
    time.zoom(factor, frameAt(centreX))
    time.move((-shiftX * framesPerPixel) / factor)
  })
  useZoomWheel(surface, time, frameAt)

  const press = (event: KeyboardEvent) => {
    const action = seekActionOf(event, (time.view.to - time.view.from) / sound.sampleRate)
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
      aria-label="Position in the take"
      aria-valuemin={0}
      aria-valuemax={Math.round(frames / sound.sampleRate)}
      aria-valuenow={Math.round(seconds)}
      aria-valuetext={stoppedAt === null ? 'playing' : speakTime(seconds)}
      onKeyDown={press}
      onPointerDown={(event) => {
        if (pinch.down(event)) drag.cancel()
        else drag.down(event)
      }}
      onPointerMove={(event) => {
        if (!pinch.move(event)) drag.move(event)
      }}
      onPointerUp={(event) => {
        pinch.up(event)
        drag.up(event)
      }}
      onPointerCancel={(event) => {
        pinch.up(event)
        drag.cancel()
      }}
    >
      <LoopMark range={drag.chosen ?? loop} view={time.view} />
    </div>
  )
}
