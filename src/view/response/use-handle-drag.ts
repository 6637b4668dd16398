import { type PointerEvent, useEffect, useRef } from 'react'
import { followPointer } from '../hooks/follow-pointer'
import type { Handle } from './handles'

interface HandleDrag {
  onBegin(): void
  /** How far the pointer is from where the drag began, CSS pixels, and the handle as it was then. */
  onMove(dx: number, dy: number, shiftKey: boolean, start: Handle): void
  onEnd(): void
}

/** Follows the pointer that went down on a handle until it is let go or the handle is gone. */
export function useHandleDrag({ onBegin, onMove, onEnd }: HandleDrag) {
  const stop = useRef<(() => void) | null>(null)
  useEffect(() => () => stop.current?.(), [])
  return (down: PointerEvent<HTMLElement>, start: Handle) => {
    if (down.button !== 0 || stop.current) return
    down.preventDefault()
    down.currentTarget.setPointerCapture(down.pointerId)
    const end = () => {
      stop.current = null
      onEnd()
    }
    stop.current = followPointer(down, {
      onMove: ({ clientX, clientY, shiftKey }) =>
        onMove(clientX - down.clientX, clientY - down.clientY, shiftKey, start),
      onUp: end,
      onCancel: end,
    })
    onBegin()
  }
}
