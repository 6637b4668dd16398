import type { HiddenSide } from '../../core'
import type { SideWords } from '../../session/comparison/side-words'
import type { TrialChoice, TrialKind, TrialRecord } from '../../session/trials/trial-record'
import type { MatchingGains } from '../context/app-context'
import { inWords } from '../words/in-words'

/** The names of what is hidden. Of two, they are not those of stored versions. */
const hiddenNames = { x: 'X', a: 'first', b: 'second' } as const

/** The name under which something is listened to: what is not hidden is called as everywhere. */
export function choiceName(choice: TrialChoice, sides: SideWords): string {
  return choice === 'bypassed' || choice === 'processed' ? sides[choice] : hiddenNames[choice]
}

/** What each kind of round is like. */
export function kindWords(kind: TrialKind, { bypassed, processed }: SideWords): string {
  return kind === 'name-x'
    ? `X is “${bypassed}” or “${processed}”; you can hear both by name as well`
    : `Both are hidden: which one is “${processed}”?`
}

/** What is asked in each round. */
export function questionOf(kind: TrialKind, { processed }: SideWords): string {
  return kind === 'name-x' ? 'X is' : `Which one is “${processed}”?`
}

/** Why a round cannot be answered yet. */
export const listenFirst: Readonly<Record<TrialKind, string>> = {
  'name-x': 'Listen to X for a moment before you answer.',
  'which-of-two': 'Listen to both for a moment before you answer.',
}

/** The answer that X (of two: the first) is `side`, as it is printed. */
export function answerName({ kind, sides }: Pick<TrialRecord, 'kind' | 'sides'>, side: HiddenSide): string {
  if (kind === 'name-x') return sides[side]
  return side === 'processed' ? hiddenNames.a : hiddenNames.b
}

/** Gains smaller than this print as 0 dB. */
const NOTHING_DB = 0.05

/** How both sides are matched, so that their level gives nothing away. */
export function matchingWords(
  { bypassedDb, processedDb, measuredOver }: MatchingGains,
  sides: SideWords,
): string {
  const [louder, gainDb] =
    processedDb < bypassedDb ? [sides.processed, processedDb] : [sides.bypassed, bypassedDb]
  const made =
    gainDb < -NOTHING_DB
      ? `Matched: “${louder}” plays ${inWords(-gainDb)} dB lower`
      : 'Both are already equally loud'
  return `${made}, measured over the ${measuredOver}. This does not change during the trial.`
}

/** How many trials there were, and what that does to the best of them. */
export function historyWords(history: readonly TrialRecord[]): string {
  const finished = history.filter((trial) => trial.finished).length
  const counted = `${history.length} started: ${finished} finished, ${history.length - finished} abandoned.`
  return finished > 1 ? `${counted} The best of several looks better than it is: count them all.` : counted
}
