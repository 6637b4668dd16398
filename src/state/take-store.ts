import { createStore, type StoreApi } from 'zustand/vanilla'
import type { FileHeader } from '../audio/files/file-header'
import type { Measures, Sound } from '../core'

/** A take on the bench. */
export interface Take {
  readonly name: string
  readonly sound: Sound
  /** What its file said of itself; null for the demo. */
  readonly header: FileHeader | null
  /** Samples that were not numbers and were replaced by silence. */
  readonly replacedSamples: number
  /** Null until measured. */
  readonly measures: Measures | null
}

/** What goes with the take, at the take's rate. */
export interface Backing {
  readonly name: string
  readonly sound: Sound
}

/** Something that did not work, in words made to be shown. */
export interface Problem {
  readonly message: string
}

export interface TakeState {
  readonly take: Take | null
  readonly backing: Backing | null
  /** The file being taken in just now; its name, or null. */
  readonly loading: string | null
  readonly problem: Problem | null
}

/** What is on the bench. */
export function createTakeStore(): StoreApi<TakeState> {
  return createStore<TakeState>()(() => ({ take: null, backing: null, loading: null, problem: null }))
}
