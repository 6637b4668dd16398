import { type RefObject, useLayoutEffect, useState } from 'react'

/** The width of an element in whole CSS pixels, kept up to date; 0 before it is known. */
export function useWidth(element: RefObject<HTMLElement | null>): number {
  const [width, setWidth] = useState(0)
  useLayoutEffect(() => {
    const observed = element.current
    if (!observed) return
    const measure = () => setWidth(Math.floor(observed.getBoundingClientRect().width))
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(observed)
    return () => observer.disconnect()
  }, [element])
  return width
}
