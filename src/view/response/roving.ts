/**
 * Position of the handle that a key goes to from the one that has the focus: Page Down and Page Up to the next and the
 * one before, Home and End to the first and the last. Null where the key goes nowhere. Screen readers leave all four to a
 * slider.
 */
export function neighbourOf(
  handles: readonly { readonly key: string }[],
  from: string | null,
  key: string,
): number | null {
  const at = handles.findIndex((handle) => handle.key === from)
  const last = handles.length - 1
  switch (key) {
    case 'PageDown':
      return Math.min(at + 1, last)
    case 'PageUp':
      return Math.max(at - 1, 0)
    case 'Home':
      return 0
    case 'End':
      return last
    default:
      return null
  }
}
