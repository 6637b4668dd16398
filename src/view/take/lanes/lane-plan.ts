import { type ChainDoc, listeningPointIndexOf, type StageDoc, stageDefinitions } from '../../../core'

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
  | { readonly kind: 'marks' | 'wave' | 'spectrogram' | 'loudness' }
  | { readonly kind: 'gainReduction'; readonly stage: LaneStage }

/** The lanes that a take with this chain has, from the top. */
export function lanePlan(
  { stages }: ChainDoc,
  listeningPoint: string | null,
  hasSpectrogram: boolean,
): readonly PlannedLane[] {
  const lastHeard = listeningPointIndexOf(stages, listeningPoint)
  const reducing = stages.flatMap(({ id, kind, on }, index): PlannedLane[] =>
    stageDefinitions[kind].reducesGain
      ? [{ kind: 'gainReduction', stage: { id, kind, on, number: index + 1, heard: index <= lastHeard } }]
      : [],
  )
  const spectrogram: readonly PlannedLane[] = hasSpectrogram ? [{ kind: 'spectrogram' }] : []
  return [{ kind: 'marks' }, { kind: 'wave' }, ...spectrogram, ...reducing, { kind: 'loudness' }]
}
