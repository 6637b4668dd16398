/** The side of a comparison that stands behind a hidden name. */
export type HiddenSide = 'bypassed' | 'processed'

/**
 * What is hidden in each of `rounds` rounds, in order. Every round is drawn by itself, as a fair coin would: to even
 * out the two sides would let a listener who counts them guess the last ones better than chance.
 *
 * @param rounds whole number, 0 or more
 * @param randomBit a fair, independent bit at each call
 * @throws RangeError for other numbers of rounds
 */
export function drawOrder(rounds: number, randomBit: () => boolean): readonly HiddenSide[] {
  if (!Number.isInteger(rounds) || rounds < 0) throw new RangeError(`no order of ${rounds} rounds`)
  return Array.from({ length: rounds }, () => (randomBit() ? 'processed' : 'bypassed'))
}
