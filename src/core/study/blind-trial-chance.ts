/** Up to here every term below is a whole number that a double holds exactly. */
const MOST_EXACT_ROUNDS = 48

/** A result that guessing alone reaches less often than this is called rare: the usual 1 in 20 (common practice, no source). */
export const RARE = 0.05

/**
 * The probability of `right` or more right answers in `rounds` rounds, when each is right with the probability
 * `chance`: the upper tail of the binomial distribution, summed term by term.
 *
 * @param right 0 to `rounds`
 * @param rounds 1 to 48
 * @param chance 0 to 1
 * @throws RangeError outside of these
 */
export function probabilityOfAtLeast(right: number, rounds: number, chance: number): number {
  if (!Number.isInteger(rounds) || rounds < 1 || rounds > MOST_EXACT_ROUNDS)
    throw new RangeError(`${rounds} rounds: expected a whole number from 1 to ${MOST_EXACT_ROUNDS}`)
  if (!Number.isInteger(right) || right < 0 || right > rounds)
    throw new RangeError(`${right} right: expected a whole number from 0 to ${rounds}`)
  if (!(chance >= 0 && chance <= 1)) throw new RangeError(`chance ${chance}: expected 0 to 1`)
  let ways = 1
  let sum = 0
  for (let k = 0; k <= rounds; k++) {
    if (k >= right) sum += ways * chance ** k * (1 - chance) ** (rounds - k)
    ways = (ways * (rounds - k)) / (k + 1)
  }
  return sum
}

/**
 * The probability that guessing alone gets `right` or more of `rounds` right: the exact one-sided binomial test with
 * a chance of one half. Exact to the last bit, since every term is a whole number of 2^-rounds.
 * @throws RangeError as {@link probabilityOfAtLeast}
 */
export function probabilityByChance(right: number, rounds: number): number {
  return probabilityOfAtLeast(right, rounds, 0.5)
}

/**
 * The fewest right answers in `rounds` that guessing alone reaches in less than 1 in 20 runs; null where even all
 * of them would not be that rare.
 * @throws RangeError as {@link probabilityOfAtLeast}
 */
export function fewestRareRight(rounds: number): number | null {
  for (let right = 0; right <= rounds; right++) {
    if (probabilityByChance(right, rounds) < RARE) return right
  }
  return null
}
