import { useSyncExternalStore } from 'react'

/** What browsers take for the size of text unless told otherwise, CSS pixels. */
const USUAL_PX = 16

function textScale(): number {
  const px = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  return px > 0 ? px / USUAL_PX : 1
}

/** Text and its width change together: what is as wide as a line of it tells. */
function onChange(tell: () => void): () => void {
  const measure = document.createElement('span')
  measure.style.cssText = 'position:absolute;visibility:hidden;inline-size:1rem'
  document.body.append(measure)
  const observer = new ResizeObserver(tell)
  observer.observe(measure)
  return () => {
    observer.disconnect()
    measure.remove()
  }
}

/** Size of text on the page against the usual: 1.25 in the projector view, 2 at twice the text size. */
export function useTextScale(): number {
  return useSyncExternalStore(onChange, textScale)
}
