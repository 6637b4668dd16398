import type { NumberParameter } from '../../core'
import { stepped } from './positions'

/** What of a key press matters here. */
export interface KeyPress {
  readonly key: string
  readonly shiftKey: boolean
  readonly altKey: boolean
}

const LARGE = 10
const FINE = 0.1

/** How many small moves one press is worth: ten with Shift, a tenth with Alt. */
export function pressSize({ shiftKey, altKey }: Pick<KeyPress, 'shiftKey' | 'altKey'>): number {
  return shiftKey ? LARGE : altKey ? FINE : 1
}

/**
 * The value that a key press on a slider asks for; null where the key is none of its own. Arrows move a small step,
 * Page Up and Down a large one, Home and End go to the ends, Delete and Backspace to the default.
 */
export function keyedValue(parameter: NumberParameter, value: number, press: KeyPress): number | null {
  switch (press.key) {
    case 'ArrowUp':
    case 'ArrowRight':
      return stepped(parameter, value, pressSize(press))
    case 'ArrowDown':
    case 'ArrowLeft':
      return stepped(parameter, value, -pressSize(press))
    case 'PageUp':
      return stepped(parameter, value, LARGE)
    case 'PageDown':
      return stepped(parameter, value, -LARGE)
    case 'Home':
      return parameter.min
    case 'End':
      return parameter.max
    case 'Delete':
    case 'Backspace':
      return parameter.default
    default:
      return null
  }
}
