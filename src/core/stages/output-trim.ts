import { type StageDoc, type StageKind, stageDefinitions } from './index'

/** The kind of stage that changes the level and nothing else. */
export const trimKind = 'gain' satisfies StageKind

/** A stage that changes the level by `gainDb` and nothing else. */
export function trimStage(id: string, gainDb: number): StageDoc {
  return { id, kind: trimKind, on: true, settings: { gainDb } }
}

/** `stage` with a level changed by `changeDb` more; null where it does something else, is off, or cannot go so far. */
export function withTrim(stage: StageDoc, changeDb: number): StageDoc | null {
  if (stage.kind !== trimKind || !stage.on) return null
  const { gainDb: parameter } = stageDefinitions[trimKind].parameters
  if (parameter.type !== 'number') return null
  const { min, max, digits } = parameter
  const gainDb = Number((stage.settings.gainDb + changeDb).toFixed(digits)) + 0
  return gainDb >= min && gainDb <= max ? trimStage(stage.id, gainDb) : null
}
