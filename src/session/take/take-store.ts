import { createStore, type StoreApi } from 'zustand/vanilla'
import type { TakeMarks } from '../../compute/evidence'
import type { Measures, Sound } from '../../core'
import type { TimingDoubt } from '../../files/coded/coded-span'
import type { FileHeader } from '../../files/file-header'
import type { SoundRef } from './sound-ref'

export type { TimingDoubt } from '../../files/coded/coded-span'
export { isolated } from '../../files/file-name'

/** A take with its sound. */
export interface Take {
  readonly name: string
  readonly sound: Sound
  /** What its file said of itself; null for the demo. */
  readonly header: FileHeader | null
  /** Samples that were not numbers and were replaced by silence. */
  readonly replacedSamples: number
  /** Null until measured. */
  readonly measures: Measures | null
  /** Its places that can be gone to; missing until measured. */
  readonly marks?: TakeMarks | null
  /** What cannot be told of where the sound of its file begins and ends, if anything. */
  readonly timing?: TimingDoubt | null
  /** Name of its samples, by which a session document refers to it; missing until they are read through. */
  readonly hash?: string | null
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

/** What was open, to come back. */
export interface Replaced {
  readonly take: Take
  readonly backing: Backing | null
}

/** Sounds that the session document refers to and that are not loaded. */
export interface Awaited {
  readonly take: SoundRef | null
  readonly backing: SoundRef | null
}

export const NOTHING_AWAITED: Awaited = { take: null, backing: null }

/** What the session document refers to. */
export interface TakeContent {
  readonly take: Take | null
  readonly backing: Backing | null
  readonly awaited: Awaited
}

/** What passes with the moment, and is in no document. */
export interface TakePassing {
  /** The file being taken in just now; its name, or null. */
  readonly loading: string | null
  /** Everything that did not work and was not dismissed, the oldest first. */
  readonly problems: readonly Problem[]
  /** What somebody had opened when the demo took its place, so that nothing is lost; null otherwise. */
  readonly replaced: Replaced | null
}

export interface TakeState extends TakeContent, TakePassing {}

/** No take yet. */
export function createTakeStore(): StoreApi<TakeState> {
  return createStore<TakeState>()(() => ({
    take: null,
    backing: null,
    awaited: NOTHING_AWAITED,
    loading: null,
    problems: [],
    replaced: null,
  }))
}
