import { type PointerEvent, useState } from 'react'
import type { FrameRange } from '../../../core'
import { type LoopBounds, longEnough } from '../time/fitted-loop'
import { anchorOf, between, CLICK_SLOP_PX, edgeSlopPx } from './selection'

interface LoopDragOptions {
  readonly loop: FrameRange | null
  /** The frame beneath a place on the screen. */
  frameAt(clientX: number): number
  readonly framesPerPixel: number
  readonly bounds: LoopBounds
  onClick(frame: number): void
  onLoop(range: FrameRange): void
}

interface Drag {
  readonly startX: number
  readonly anchor: number
  /** Null until the pointer has moved far enough to be no click. */
  readonly range: FrameRange | null
}

/** A drag over the take chooses a loop, or moves an end of the one there is; a plain click is told apart. */
export function useLoopDrag(options: LoopDragOptions) {
  const { loop, frameAt, framesPerPixel, bounds, onClick, onLoop } = options
  const [drag, setDrag] = useState<Drag | null>(null)
  return {
    /** The loop as it would be if the pointer were let go now. */
    chosen: drag?.range ?? null,
    down(event: PointerEvent<HTMLElement>) {
      if (event.button !== 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      const anchor = anchorOf(frameAt(event.clientX), loop, edgeSlopPx(event.pointerType) * framesPerPixel)
      setDrag({ startX: event.clientX, anchor, range: null })
    },
    move(event: PointerEvent) {
      if (!drag) return
      const still = !drag.range && Math.abs(event.clientX - drag.startX) < CLICK_SLOP_PX
      if (still) return
      const range = longEnough(between(drag.anchor, frameAt(event.clientX)), drag.anchor, bounds)
      setDrag({ ...drag, range })
    },
    up(event: PointerEvent) {
      if (!drag) return
      if (drag.range) onLoop(drag.range)
      else onClick(frameAt(event.clientX))
      setDrag(null)
    },
    cancel() {
      setDrag(null)
    },
  }
}
