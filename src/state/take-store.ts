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
  /** Goes with the demo, and with no other take. */
  readonly ofDemo?: true
}

/** Something that did not work, in words made to be shown. */
export interface Problem {
  readonly message: string
}

/** What was on the bench, to come back. */
export interface Replaced {
  readonly take: Take
  readonly backing: Backing | null
}

export interface TakeState {
  readonly take: Take | null
  readonly backing: Backing | null
  /** The file being taken in just now; its name, or null. */
  readonly loading: string | null
  readonly problem: Problem | null
  /** What somebody had opened when the demo took its place, so that nothing is lost; null otherwise. */
  readonly replaced: Replaced | null
}

/** What is on the bench. */
export function createTakeStore(): StoreApi<TakeState> {
  return createStore<TakeState>()(() => ({
    take: null,
    backing: null,
    loading: null,
    problem: null,
    replaced: null,
  }))
}
