import type { PointerEvent as ReactPointerEvent } from 'react'

interface Following {
  onMove(event: PointerEvent): void
  /** The pointer is let go. */
  onUp(event: PointerEvent): void
  /** The browser has taken the pointer away, as for scrolling, or the following was stopped. */
  onCancel(): void
}

/**
 * Follows the pointer of a press until it ends, wherever it goes and whatever becomes of the element it went down on.
 * Other pointers are left alone.
 * @returns stops following before the pointer ends; does nothing once it has ended
 */
export function followPointer(
  { pointerId }: Pick<ReactPointerEvent, 'pointerId'>,
  { onMove, onUp, onCancel }: Following,
): () => void {
  const listening = new AbortController()
  const on = (type: 'pointermove' | 'pointerup' | 'pointercancel', react: (event: PointerEvent) => void) =>
    window.addEventListener(type, (event) => event.pointerId === pointerId && react(event), {
      signal: listening.signal,
    })
  const stop = () => {
    if (listening.signal.aborted) return
    listening.abort()
    onCancel()
  }
  on('pointermove', onMove)
  on('pointerup', (event) => {
    listening.abort()
    onUp(event)
  })
  on('pointercancel', stop)
  return stop
}
