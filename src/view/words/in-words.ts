import { plain } from '../../core'

/** A figure as a sentence has it, with no more digits than it needs: 3, 4.5, −2. */
export function inWords(value: number, digits = 1): string {
  return plain(value, digits).replace(/\.0+$/, '')
}
