import type {
  FrameRange,
  LoudnessOverTime,
  Measures,
  Pauses,
  PeakPyramid,
  ReductionSummary,
  SibilantEvent,
  Spectrum,
  Trace,
} from '../../core'
import { type SoundAddress, soundKey } from '../address'

/** Where a take is measured for what is not everywhere: noise floor and sibilance. */
export interface Places {
  readonly pauses: Pauses | null
  readonly sibilants: readonly SibilantEvent[]
}

/** Everything that can be known about a sound, by name. */
export interface FactValues {
  /** Of the take, whatever stages it runs through. */
  readonly places: Places
  /** Where the take is clipped, as in `clippedRanges`; asked of the take itself. */
  readonly clipped: readonly FrameRange[]
  /** K-weighted energies of its sub-blocks of 10 ms. */
  readonly energies: Float64Array
  /** Integrated loudness, LUFS; null where not measurable. */
  readonly integratedLufs: number | null
  readonly measures: Measures
  readonly loudness: LoudnessOverTime
  readonly peaks: PeakPyramid
  readonly spectrum: Spectrum
  /** Of the last stage; null where it does not reduce gain. */
  readonly trace: Trace | null
  readonly reduction: ReductionSummary | null
}

export type FactName = keyof FactValues

/** Names of facts wanted about the sound behind `stages`. */
export interface Want {
  readonly stages: SoundAddress['stages']
  readonly names: readonly FactName[]
}

/** One text for each fact. */
export function factKey({ take, stages }: SoundAddress, name: FactName): string {
  return `${soundKey({ take, stages: name === 'places' ? [] : stages })}\n${name}`
}
