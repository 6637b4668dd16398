import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Measures, Sound } from '../../core'
import type { TimingDoubt } from '../../files/coded/coded-span'
import type { FileHeader } from '../../files/file-header'

export type { TimingDoubt } from '../../files/coded/coded-span'
export { isolated } from '../../files/file-name'

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
  /** What cannot be told of where the sound of its file begins and ends, if anything. */
  readonly timing?: TimingDoubt | null
}

/** What goes with the take, at the take's rate. */
export interface Backing {
  readonly name: string
  readonly sound: Sound
  /** Goes with the demo, and with no other take. */
  readonly ofDemo?: true
  /** What cannot be told of where the sound of its file begins and ends, if anything. */
  readonly timing?: TimingDoubt | null
}

/** Something that did not work, in words made to be shown. */
export interface Problem {
  readonly message: string
  /** The file it is about, by the name that is shown: opening that again takes it back. */
  readonly fileName?: string
}

/** `problems` and one more, which stands in place of one in the same words. */
export function withProblem(problems: readonly Problem[], problem: Problem): readonly Problem[] {
  return [...problems.filter(({ message }) => message !== problem.message), problem]
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
  /** Everything that did not work and was not dismissed, the oldest first. */
  readonly problems: readonly Problem[]
  /** What somebody had opened when the demo took its place, so that nothing is lost; null otherwise. */
  readonly replaced: Replaced | null
}

/** What is on the bench. */
export function createTakeStore(): StoreApi<TakeState> {
  return createStore<TakeState>()(() => ({
    take: null,
    backing: null,
    loading: null,
    problems: [],
    replaced: null,
  }))
}
