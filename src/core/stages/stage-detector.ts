import type { StaticCurve } from '../dsp/dynamics/gain-computer'
import { type StageDoc, type StageKind, stageDefinitions } from './index'
import type { NumberParameter } from './parameter'

/** A setting that is set by looking at a level: its key in the settings, its row in the table, and its value. */
export interface SetByLevel {
  readonly key: string
  readonly parameter: NumberParameter
  readonly value: number
}

/** What one stage detects. */
export interface DetectorOf {
  readonly threshold: SetByLevel
  readonly knee: SetByLevel
  /** Null where all of the sound is detected. */
  readonly crossover: SetByLevel | null
  readonly curve: StaticCurve
}

/** What a stage detects; null where its kind detects nothing. */
export function detectorOf<Kind extends StageKind>(stage: StageDoc<Kind>): DetectorOf | null {
  const { detector } = stageDefinitions[stage.kind]
  if (!detector) return null
  const values = new Map<string, unknown>(Object.entries(stage.settings))
  const row = ({ key, parameter }: Omit<SetByLevel, 'value'>): SetByLevel => {
    const value = values.get(key)
    return { key, parameter, value: typeof value === 'number' ? value : parameter.default }
  }
  return {
    threshold: row(detector.threshold),
    knee: row(detector.knee),
    crossover: detector.crossover && row(detector.crossover),
    curve: detector.curve(stage.settings),
  }
}

/** The same for all stages whose detectors see the same level in the same sound, on or off; null without detector. */
export function levelStage<Kind extends StageKind>(stage: StageDoc<Kind>): StageDoc<Kind> | null {
  const { detector } = stageDefinitions[stage.kind]
  return detector && { ...stage, on: true, settings: detector.levelSettings(stage.settings) }
}
