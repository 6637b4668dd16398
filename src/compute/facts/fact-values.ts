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

/**
 * Where a take is measured for what is not everywhere: noise floor and sibilance. Of a range of it, those of the take
 * that lie within, counted from its start.
 */
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
  /** Of this range of it; of all of it where it is missing. */
  readonly range?: FrameRange
  readonly names: readonly FactName[]
}

/** Which sound of a take is wanted. */
export function addressOf(take: string, { stages, range }: Want): SoundAddress {
  return { take, stages, ...(range && { range }) }
}

/** One text for each fact. */
export function factKey(address: SoundAddress, name: FactName): string {
  return `${soundKey(name === 'places' ? { ...address, stages: [] } : address)}\n${name}`
}
