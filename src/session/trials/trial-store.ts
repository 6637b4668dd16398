import { createStore, type StoreApi } from 'zustand/vanilla'
import type { TrialChoice, TrialKind, TrialRecord } from './trial-record'

/** The trial under way, as far as its listener may know it. What is hidden is not here. */
export interface RunningTrial {
  readonly number: number
  readonly kind: TrialKind
  readonly rounds: number
  /** The round at hand, from 1. */
  readonly round: number
  /** What is listened to now, by the name it goes under. */
  readonly choice: TrialChoice
  /** Whether everything hidden has sounded for a moment in this round; until then no answer is taken. */
  readonly heard: boolean
}

export interface TrialState {
  readonly running: RunningTrial | null
  /** Every trial that was begun, the oldest first. */
  readonly history: readonly TrialRecord[]
  /** Number of the trial whose result is on show; null while the next one is chosen. */
  readonly shown: number | null
}

/** Blind trials: the one under way, and those that were. */
export function createTrialStore(): StoreApi<TrialState> {
  return createStore<TrialState>()(() => ({ running: null, history: [], shown: null }))
}
