import {
  type ChainDoc,
  detectorOf,
  listeningPointIndexOf,
  type StageDoc,
  stageDefinitions,
} from '../../../core'

/** A stage that has a lane of its own. */
export interface LaneStage {
  readonly id: string
  readonly kind: StageDoc['kind']
  readonly on: boolean
  /** Its number in the chain, from 1. */
  readonly number: number
  /** Whether it comes before the listening point. */
  readonly heard: boolean
}

/** A lane that is to be drawn. */
export type PlannedLane =
  | { readonly kind: 'marks' | 'wave' | 'spectrogram' | 'level' | 'loudness' }
  | { readonly kind: 'gainReduction'; readonly stage: LaneStage }

/**
 * The lanes that a take with this chain has, from the top.
 * @param selected the stage whose level is shown, if it detects one
 */
export function lanePlan(
  { stages }: ChainDoc,
  listeningPoint: string | null,
  hasSpectrogram: boolean,
  selected: StageDoc | null = null,
): readonly PlannedLane[] {
  const lastHeard = listeningPointIndexOf(stages, listeningPoint)
  const reducing = stages.flatMap(({ id, kind, on }, index): PlannedLane[] =>
    stageDefinitions[kind].reducesGain
      ? [{ kind: 'gainReduction', stage: { id, kind, on, number: index + 1, heard: index <= lastHeard } }]
      : [],
  )
  const spectrogram: readonly PlannedLane[] = hasSpectrogram ? [{ kind: 'spectrogram' }] : []
  const level: readonly PlannedLane[] = selected && detectorOf(selected) ? [{ kind: 'level' }] : []
  return [{ kind: 'marks' }, { kind: 'wave' }, ...spectrogram, ...reducing, ...level, { kind: 'loudness' }]
}
