/** What browsers take for the size of text unless told otherwise, CSS pixels. */
export const USUAL_PX = 16

/** Size of the page's text right now, CSS pixels. */
export function pxOfRem(): number {
  const px = Number.parseFloat(getComputedStyle(document.documentElement).fontSize)
  return px > 0 ? px : USUAL_PX
}
