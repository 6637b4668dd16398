import {
  type AddedHarmonics,
  type DetectorLevel,
  type FrameRange,
  type LoudnessOverTime,
  levelStage,
  type Measures,
  type Pauses,
  type PeakPyramid,
  type ReductionSummary,
  type SibilantEvent,
  type SibilantLevel,
  type Spectrum,
  type StageDoc,
  type Trace,
} from '../../core'
import { type SoundAddress, soundKey, stagesOn } from '../address'

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
  /** What the detector of the last stage sees of the sound in front of it; null where it has none. */
  readonly detectorLevel: DetectorLevel | null
  /** Of each sibilant of the take; null where the last stage has no detector. */
  readonly sibilantLevels: readonly SibilantLevel[] | null
  /** What the last stage adds to a sine as loud as the sound in front of it; null where that is not measurable. */
  readonly addedHarmonics: AddedHarmonics | null
}

export type FactName = keyof FactValues

/** Facts about the last stage that are worked out from the sound in front of it: that behind it is not needed. */
export const factsInFront: ReadonlySet<FactName> = new Set([
  'detectorLevel',
  'sibilantLevels',
  'addedHarmonics',
])

/** The last of the stages that are on, and those in front of it; null where all are off. */
export function lastAndFront(
  stages: SoundAddress['stages'],
): { readonly last: StageDoc; readonly front: SoundAddress['stages'] } | null {
  const on = stagesOn(stages)
  const last = on.at(-1)
  return last ? { last, front: on.slice(0, -1) } : null
}

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

/** One text for each fact: the same where no setting that differs has a part in it. */
export function factKey(address: SoundAddress, name: FactName): string {
  return `${soundKey({ ...address, stages: stagesThatMatter(address.stages, name) })}\n${name}`
}

function stagesThatMatter(stages: SoundAddress['stages'], name: FactName): SoundAddress['stages'] {
  switch (name) {
    case 'places':
      return []
    case 'detectorLevel':
    case 'sibilantLevels': {
      const found = lastAndFront(stages)
      const detecting = found && levelStage(found.last)
      return found && detecting ? [...found.front, detecting] : stages
    }
    default:
      return stages
  }
}
