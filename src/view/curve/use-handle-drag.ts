import type { PointerEvent } from 'react'
import type { Handle } from './handles'

interface HandleDrag {
  onBegin(): void
  /** How far the pointer is from where the drag began, CSS pixels, and the handle as it was then. */
  onMove(dx: number, dy: number, shiftKey: boolean, start: Handle): void
  onEnd(): void
}

/** Follows a pointer from where it went down on a handle until it is let go. */
export function useHandleDrag({ onBegin, onMove, onEnd }: HandleDrag) {
  return (down: PointerEvent<HTMLElement>, start: Handle) => {
    if (down.button !== 0) return
    down.preventDefault()
    const element: HTMLElement = down.currentTarget
    element.setPointerCapture(down.pointerId)
    const listening = new AbortController()
    const on = { signal: listening.signal }
    const end = () => {
      listening.abort()
      onEnd()
    }
    element.addEventListener(
      'pointermove',
      (event) => onMove(event.clientX - down.clientX, event.clientY - down.clientY, event.shiftKey, start),
      on,
    )
    element.addEventListener('lostpointercapture', end, on)
    onBegin()
  }
}
