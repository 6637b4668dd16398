import { createStore, type StoreApi } from 'zustand/vanilla'
import type { SideWords } from '../comparison/side-words'
import type { TrialChoice, TrialKind, TrialRecord } from './trial-record'

/** The trial under way, as far as its listener may know it. What is hidden is not here. */
export interface RunningTrial {
  readonly number: number
  readonly kind: TrialKind
  /** What the two sides are called. */
  readonly sides: SideWords
  readonly rounds: number
  /** The current round, from 1. */
  readonly round: number
  /** What is listened to now, by the name it goes under. */
  readonly choice: TrialChoice
  /** Whether everything hidden has sounded for a moment in this round; until then no answer is taken. */
  readonly heard: boolean
}

/** What the session document holds. */
export interface TrialContent {
  /** Every trial that was begun, the oldest first. */
  readonly history: readonly TrialRecord[]
}

/** What passes with the moment, and is in no document. */
export interface TrialPassing {
  readonly running: RunningTrial | null
  /** Number of the trial whose result is on show; null while the next one is chosen. */
  readonly shown: number | null
}

export interface TrialState extends TrialContent, TrialPassing {}

/** Blind trials: the one under way, and those before. */
export function createTrialStore(): StoreApi<TrialState> {
  return createStore<TrialState>()(() => ({ running: null, history: [], shown: null }))
}
