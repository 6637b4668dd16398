import { plain } from '../stages/number-format'
import { fewestRareRight, probabilityByChance, probabilityOfAtLeast, RARE } from './blind-trial-chance'

/** What a finished blind trial came to. */
export interface TrialResult {
  readonly right: number
  readonly rounds: number
}

/** A listener who plainly hears something, though not each time: right three times in four. */
const HEARS_OFTEN = 0.75

/**
 * What a result says, in plain sentences that claim no more than it does: how often guessing does as well, and,
 * where guessing could have done it, that a miss proves nothing. The result itself stands above them.
 * @throws RangeError where `right` of `rounds` is no result of 1 to 48 rounds
 */
export function trialSentence({ right, rounds }: TrialResult): string {
  const byChance = probabilityByChance(right, rounds)
  const odds = `Guessing alone does as well or better in ${inHundred(byChance)} such runs (exact one-sided probability ${printProbability(byChance)}).`
  const meaning =
    byChance < RARE
      ? 'Guessing is an unlikely account of this run. It does not say which side is better, nor by how much.'
      : 'This run does not tell the answers from guessing, and that is no proof that there is no difference.'
  const missed = missedShare(rounds)
  const power =
    missed === null
      ? `A run of ${rounds} is too short to tell anything from guessing.`
      : `In runs of this length a listener who is right three times in four is not told from guessing in ${inHundred(missed)}.`
  return `${odds} ${meaning} ${power}`
}

/** A probability with four digits, and never as 0. */
export function printProbability(probability: number): string {
  return probability < 0.0001 ? 'below 0.0001' : probability.toFixed(4)
}

/**
 * How often a run of this length misses something that is there.
 * @throws RangeError for a number of rounds outside 1 to 48
 */
export function powerSentence(rounds: number): string {
  const needed = fewestRareRight(rounds)
  const missed = missedShare(rounds)
  if (needed === null || missed === null)
    return `A run of ${rounds} is too short to tell anything from guessing.`
  return `Guessing seldom reaches ${needed} of ${rounds} (${inHundred(probabilityByChance(needed, rounds))} runs); a listener who is right three times in four still falls short of it in ${inHundred(missed)}.`
}

/** How often a listener who hears something often is not told from guessing; null where nobody would be. */
function missedShare(rounds: number): number | null {
  const needed = fewestRareRight(rounds)
  return needed === null ? null : 1 - probabilityOfAtLeast(needed, rounds, HEARS_OFTEN)
}

/** A probability as people count: "3.8 of 100", "fewer than 1 of 1000". */
function inHundred(probability: number): string {
  if (probability < 0.001) return 'fewer than 1 of 1000'
  if (probability < 1 && probability > 0.999) return 'more than 999 of 1000'
  return `${plain(probability * 100, probability === 1 ? 0 : 1)} of 100`
}
