import type { HiddenSide } from '../../core'
import type { TrialChoice, TrialKind, TrialRecord } from '../../session/trials/trial-record'
import type { MatchingGains } from '../context/app-context'
import { inWords } from '../words/in-words'

/** The names under which the sides are listened to. */
export const choiceNames: Readonly<Record<TrialChoice, string>> = {
  bypassed: 'without',
  processed: 'with',
  x: 'X',
  a: 'A',
  b: 'B',
}

/** What is asked in each round. */
export const questions: Readonly<Record<TrialKind, string>> = {
  'name-x': 'X is',
  'which-of-two': 'Which one is processed?',
}

/** Why a round cannot be answered yet. */
export const listenFirst: Readonly<Record<TrialKind, string>> = {
  'name-x': 'Listen to X for a moment before you answer.',
  'which-of-two': 'Listen to A and B for a moment before you answer.',
}

/** The answer that X (of two: A) is `side`, as it is printed. */
export function answerName(kind: TrialKind, side: HiddenSide): string {
  if (kind === 'name-x') return choiceNames[side]
  return side === 'processed' ? 'A' : 'B'
}

/** Gains smaller than this print as 0 dB. */
const NOTHING_DB = 0.05

/** How both sides are matched, so that their level gives nothing away. */
export function matchingWords({ bypassedDb, processedDb, measuredOver }: MatchingGains): string {
  const [louder, gainDb] = processedDb < bypassedDb ? ['with', processedDb] : ['without', bypassedDb]
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
