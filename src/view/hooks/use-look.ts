import { useSyncExternalStore } from 'react'

/** What changes the colours of the page without a change of its elements. */
const QUERIES = ['(prefers-color-scheme: dark)', '(forced-colors: active)']

function look(): string {
  const style = getComputedStyle(document.documentElement)
  return `${style.color} ${style.getPropertyValue('--weight')} ${devicePixelRatio}`
}

function onChange(tell: () => void): () => void {
  const listening = new AbortController()
  const on = { signal: listening.signal }
  for (const query of QUERIES) matchMedia(query).addEventListener('change', tell, on)
  // Zooming the page, or moving it to another screen, changes how many device pixels there are to one of CSS.
  addEventListener('resize', tell, on)
  const observer = new MutationObserver(tell)
  observer.observe(document.documentElement, { attributeFilter: ['data-theme', 'data-view'] })
  return () => {
    listening.abort()
    observer.disconnect()
  }
}

/**
 * Ink, weight of lines and device pixels of the page, in one text: pictures that styles do not reach, on a canvas, are
 * drawn anew when it changes.
 */
export function useLook(): string {
  return useSyncExternalStore(onChange, look)
}
