import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/**
 * Width of an element's content in whole CSS pixels, kept up to date; `first` until it is laid out, and the last width
 * while it is hidden.
 */
export function useWidth(first = 0): [element: RefObject<HTMLDivElement | null>, width: number] {
  const element = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(first)
  useLayoutEffect(() => {
    const observed = element.current
    if (!observed) return
    const measure = () => {
      const now = Math.floor(observed.getBoundingClientRect().width)
      if (now > 0) setWidth(now)
    }
    // Before the first paint, so that nothing in it moves.
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(observed)
    return () => observer.disconnect()
  }, [])
  return [element, width]
}
