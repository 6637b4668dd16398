/**
 * Has the page drawn in its light theme while it is printed: pictures on a canvas keep the ink that they were drawn
 * with, whatever the styles for paper say.
 * @returns ends it
 */
export function printInLight(): () => void {
  const { dataset } = document.documentElement
  let shown: string | undefined
  const before = () => {
    shown = dataset.theme
    dataset.theme = 'light'
  }
  const after = () => {
    if (shown === undefined) delete dataset.theme
    else dataset.theme = shown
  }
  window.addEventListener('beforeprint', before)
  window.addEventListener('afterprint', after)
  return () => {
    window.removeEventListener('beforeprint', before)
    window.removeEventListener('afterprint', after)
  }
}
