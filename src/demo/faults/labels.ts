import type { Sound } from '../../core'
import type { PhonemeKind } from '../song/phonemes'

/** One stretch of the vocal. The labels of a take follow each other without gaps and fill it. */
export interface PhonemeLabel {
  readonly symbol: string
  readonly kind: PhonemeKind
  readonly startSeconds: number
  readonly endSeconds: number
  /** The written pitch of a vowel; other sounds have none. */
  readonly frequencyHz?: number
}

export type FaultKind =
  | 'rumble'
  | 'proximity'
  | 'plosive-burst'
  | 'box-resonance'
  | 'uneven-level'
  | 'sharp-sibilance'
  | 'dull-top'
  | 'room-noise'
  | 'reverberation'

/** One thing that was done to the clean voice on purpose, with its size. */
export interface FaultLabel {
  readonly kind: FaultKind
  readonly what: string
  readonly amount: number
  /** `dB` is against what `what` names or, if it names nothing, the clean voice; `dBFS` an RMS level; `cm` a distance. */
  readonly unit: 'dB' | 'dBFS' | 'cm'
  /** Where in the spectrum, if it has a place there. */
  readonly frequencyHz?: number
  /** When, if it does not last from end to end. */
  readonly startSeconds?: number
  readonly endSeconds?: number
}

/** One line of the song, from its first consonant to its last. */
export interface PhraseLabel {
  readonly words: string
  readonly startSeconds: number
  readonly endSeconds: number
}

export interface DemoLabels {
  readonly phonemes: readonly PhonemeLabel[]
  readonly phrases: readonly PhraseLabel[]
  readonly faults: readonly FaultLabel[]
}

/** A sung take with its backing, of one length and sample rate, and what is known about it. */
export interface DemoTake {
  readonly title: string
  readonly vocal: Sound
  readonly backing: Sound
  readonly labels: DemoLabels
}
