import { type RefObject, useLayoutEffect, useRef, useState } from 'react'

/** Width of an element in CSS pixels as the page is laid out; `first` until that is known. */
export function useWidth(first: number): [RefObject<HTMLDivElement | null>, number] {
  const element = useRef<HTMLDivElement>(null)
  const [width, setWidth] = useState(first)
  useLayoutEffect(() => {
    const observed = element.current
    if (!observed) return
    // Before the first picture, so that nothing in it moves.
    if (observed.clientWidth > 0) setWidth(observed.clientWidth)
    const observer = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.width > 0) setWidth(entry.contentRect.width)
    })
    observer.observe(observed)
    return () => observer.disconnect()
  }, [])
  return [element, width]
}
