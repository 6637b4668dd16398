import { useSyncExternalStore } from 'react'
import { pxOfRem, USUAL_PX } from './px-of-rem'

function textScale(): number {
  return pxOfRem() / USUAL_PX
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
