/** What a key does on the take: seconds to go by, a place to go to, or a zoom. Null: not a key of the take's. */
export type SeekAction =
  | { readonly type: 'by'; readonly seconds: number }
  | { readonly type: 'to'; readonly end: 'start' | 'end' }
  | { readonly type: 'zoom'; readonly factor: number }
  | { readonly type: 'all' }

export const ZOOM_STEP = 1.6

interface Press {
  readonly key: string
  readonly shiftKey: boolean
  readonly altKey: boolean
  readonly ctrlKey: boolean
  readonly metaKey: boolean
}

/** Views that are shorter, in seconds, are gone along in smaller steps, so that a step does not lead out of them. */
const WHOLE_STEPS_SECONDS = 4

/**
 * Arrows go by a second, with Shift by ten, with Alt by a tenth, by less in a view of less than 4 s; Home and End go to
 * the ends; + - 0 zoom.
 */
export function seekActionOf(
  { key, shiftKey, altKey, ctrlKey, metaKey }: Press,
  viewSeconds: number,
): SeekAction | null {
  if (ctrlKey || metaKey) return null
  const whole = Math.min(1, viewSeconds / WHOLE_STEPS_SECONDS)
  const step = whole * (shiftKey ? 10 : altKey ? 0.1 : 1)
  switch (key) {
    case 'ArrowLeft':
    case 'ArrowDown':
      return { type: 'by', seconds: -step }
    case 'ArrowRight':
    case 'ArrowUp':
      return { type: 'by', seconds: step }
    case 'PageDown':
      return { type: 'by', seconds: -10 * whole }
    case 'PageUp':
      return { type: 'by', seconds: 10 * whole }
    case 'Home':
      return { type: 'to', end: 'start' }
    case 'End':
      return { type: 'to', end: 'end' }
    case '+':
    case '=':
      return { type: 'zoom', factor: ZOOM_STEP }
    case '-':
      return { type: 'zoom', factor: 1 / ZOOM_STEP }
    case '0':
      return { type: 'all' }
    default:
      return null
  }
}
