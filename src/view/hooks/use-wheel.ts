import { type RefObject, useEffect, useRef } from 'react'

/**
 * Calls back on wheel turns over an element, +1 up or -1 down, only while the focus is in it: a page that is being
 * scrolled past must not change settings. React listens passively, so the listener is attached by hand.
 */
export function useWheel(
  target: RefObject<HTMLElement | null>,
  onTurn: (direction: 1 | -1, event: WheelEvent) => void,
): void {
  const latest = useRef(onTurn)
  useEffect(() => {
    latest.current = onTurn
  })
  useEffect(() => {
    const element = target.current
    if (!element) return
    const turn = (event: WheelEvent) => {
      const delta = event.deltaY || event.deltaX
      if (delta === 0 || !element.contains(document.activeElement)) return
      event.preventDefault()
      latest.current(delta < 0 ? 1 : -1, event)
    }
    element.addEventListener('wheel', turn, { passive: false })
    return () => element.removeEventListener('wheel', turn)
  }, [target])
}
