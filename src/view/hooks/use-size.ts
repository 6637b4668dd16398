import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** Size of an element in whole CSS pixels. */
export interface ElementSize {
  readonly width: number
  readonly height: number
}

const NOT_LAID_OUT: ElementSize = { width: 0, height: 0 }

/**
 * Size of an element without borders, kept up to date; `first` until it is laid out, and the last size while it is hidden.
 * The element must get its size from its surroundings and not from what is drawn into it by this size.
 */
export function useSize<Target extends HTMLElement = HTMLDivElement>(
  first: ElementSize = NOT_LAID_OUT,
): [element: RefObject<Target | null>, size: ElementSize] {
  const element = useRef<Target>(null)
  const [size, setSize] = useState(first)
  useLayoutEffect(() => {
    const observed = element.current
    if (!observed) return
    const measure = () => {
      const box = observed.getBoundingClientRect()
      const width = Math.floor(box.width)
      const height = Math.floor(box.height)
      if (width > 0)
        setSize((last) => (last.width === width && last.height === height ? last : { width, height }))
    }
    // Before the first paint, so that nothing in it moves.
    measure()
    const observer = new ResizeObserver(measure)
    observer.observe(observed)
    return () => observer.disconnect()
  }, [])
  return [element, size]
}
