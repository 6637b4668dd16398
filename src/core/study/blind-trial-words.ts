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
  const odds = `Guessing alone does as well or better ${printProbability(byChance)} of the time (exact one-sided test).`
  const meaning =
    byChance < RARE
      ? 'Guessing is an unlikely explanation for this run. It does not say which side is better, or by how much.'
      : 'Guessing could explain this run, and that is no proof that there is no difference.'
  const missed = missedPart(rounds)
  const power =
    missed === null
      ? tooShort(rounds)
      : `In runs of this length, a listener who is right three times in four looks like one who guesses ${printProbability(missed)} of the time.`
  return `${odds} ${meaning} ${power}`
}

/** A probability in percent, never rounded to never or always: "4 %", "0.3 %", "less than 0.1 %". */
export function printProbability(probability: number): string {
  if (probability < 0.001) return 'less than 0.1 %'
  if (probability < 1 && probability > 0.999) return 'more than 99.9 %'
  const isNearAnEnd = probability < 0.01 || (probability > 0.99 && probability < 1)
  return `${plain(probability * 100, isNearAnEnd ? 1 : 0)} %`
}

/**
 * How often a run of this length misses something that is there.
 * @throws RangeError for a number of rounds outside 1 to 48
 */
export function powerSentence(rounds: number): string {
  const needed = fewestRareRight(rounds)
  const missed = missedPart(rounds)
  if (needed === null || missed === null) return tooShort(rounds)
  return `${needed} of ${rounds} or better happens by guessing ${printProbability(probabilityByChance(needed, rounds))} of the time; a listener who is right three times in four still falls short of it ${printProbability(missed)} of the time.`
}

/** How often a listener who hears something often is not told from guessing; null where nobody would be. */
function missedPart(rounds: number): number | null {
  const needed = fewestRareRight(rounds)
  return needed === null ? null : 1 - probabilityOfAtLeast(needed, rounds, HEARS_OFTEN)
}

function tooShort(rounds: number): string {
  return `A run of ${rounds} is too short to tell anything from guessing.`
}
