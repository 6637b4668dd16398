import type { MatchingGains } from '../../compute/evidence'
import type { HiddenSide } from '../../core'
import type { SideWords } from '../comparison/side-words'

/** How many rounds a trial may have. */
export const FEWEST_ROUNDS = 8
export const MOST_ROUNDS = 20
export const DEFAULT_ROUNDS = 16

/** X is one of the two sides, both of which can be heard by name; or both are hidden, and it is asked which one is processed. */
export type TrialKind = 'name-x' | 'which-of-two'

/** What can be listened to in a round, by the name it goes under there. */
export type TrialChoice = 'bypassed' | 'processed' | 'x' | 'a' | 'b'

/** One round, after it was answered: what X (of two: A) was, and what it was said to be. */
export interface TrialAnswer {
  readonly hidden: HiddenSide
  readonly said: HiddenSide
  /** From the start of the round to its answer. */
  readonly seconds: number
}

/** The record of a trial, from its beginning on: plain data, part of the session document. */
export interface TrialRecord {
  /** Counts from 1 in the order in which trials were begun. */
  readonly number: number
  /** ISO 8601, UTC. */
  readonly begunAt: string
  readonly takeName: string
  /** What was compared, in words. */
  readonly compared: string
  /** What the two sides were called. */
  readonly sides: SideWords
  readonly kind: TrialKind
  readonly rounds: number
  /** The gains that both sides had from beginning to end. */
  readonly matching: MatchingGains
  /** Empty until the trial is over, so that nobody can read in it what is still hidden. */
  readonly answers: readonly TrialAnswer[]
  /** False from the beginning on: a trial that never ended, for whatever reason, counts as abandoned. */
  readonly finished: boolean
}

/** What can be listened to, in the order of the keys 1, 2, 3. */
export function choicesOf(kind: TrialKind): readonly [TrialChoice, ...TrialChoice[]] {
  return kind === 'name-x' ? ['bypassed', 'processed', 'x'] : ['a', 'b']
}

/** The side a choice stands for in a round where X (of two: A) is `hidden`. */
export function sideOf(choice: TrialChoice, hidden: HiddenSide): HiddenSide {
  switch (choice) {
    case 'bypassed':
    case 'processed':
      return choice
    case 'x':
    case 'a':
      return hidden
    case 'b':
      return hidden === 'processed' ? 'bypassed' : 'processed'
  }
}

/** Number of rounds that were answered right. */
export function rightOf({ answers }: Pick<TrialRecord, 'answers'>): number {
  return answers.filter(({ hidden, said }) => hidden === said).length
}
