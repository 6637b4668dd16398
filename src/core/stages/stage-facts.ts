import { type StageDoc, type StageKind, stageDefinitions } from './index'
import type { NumberParameter } from './parameter'
import type { StagePicture } from './stage-picture'

/** One plain sentence on what `stage` does now. */
export function describeStage<Kind extends StageKind>(stage: StageDoc<Kind>): string {
  const definition = stageDefinitions[stage.kind]
  if (stage.on) return definition.describe(stage.settings)
  const { purpose } = definition
  return `Off: ${purpose.charAt(0).toLowerCase()}${purpose.slice(1).replace(/\.$/, '')}`
}

/** Frames by which `stage` delays, the same on or off. See {@link StageDefinition.latencyFrames}. */
export function stageLatencyFrames<Kind extends StageKind>(
  stage: StageDoc<Kind>,
  sampleRate: number,
  maxLookaheadMs?: number,
): number {
  return stageDefinitions[stage.kind].latencyFrames(stage.settings, sampleRate, maxLookaheadMs)
}

/** Whether stages of this kind, finding nothing to do, pass more than their input delayed. */
export function filtersWhenIdle(kind: StageKind): boolean {
  return stageDefinitions[kind].idleSettings !== null
}

/** `stage` as it passes a take in which it finds nothing to do: idle settings, or off where that is the same. */
export function idleStage<Kind extends StageKind>(stage: StageDoc<Kind>): StageDoc<Kind> {
  const { idleSettings } = stageDefinitions[stage.kind]
  return idleSettings ? { ...stage, settings: idleSettings(stage.settings) } : { ...stage, on: false }
}

/** The picture of a stage's settings; null where its kind has none. */
export function pictureOf<Kind extends StageKind>(stage: StageDoc<Kind>): StagePicture | null {
  return stageDefinitions[stage.kind].picture?.(stage.settings) ?? null
}

/** Makeup gain of one stage, as it can be worked out. */
export interface MakeupOf<Kind extends StageKind> {
  readonly parameter: NumberParameter
  /** Share of the output that it acts on, 0 to 1. */
  readonly share: number
  /** The stage, on, with another makeup gain, dB. */
  with(makeupDb: number): StageDoc<Kind>
}

/** The makeup gain of a stage; null where its kind has none. */
export function makeupOf<Kind extends StageKind>(stage: StageDoc<Kind>): MakeupOf<Kind> | null {
  const { makeup } = stageDefinitions[stage.kind]
  if (!makeup) return null
  return {
    parameter: makeup.parameter,
    share: makeup.share(stage.settings),
    with: (makeupDb) => ({ ...stage, on: true, settings: makeup.replaced(stage.settings, makeupDb) }),
  }
}
