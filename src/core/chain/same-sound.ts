import type { StageDoc } from '../stages'
import type { ChainDoc } from './chain-doc'

/** Whether two stages do the same to any sound: equal in everything, or both off, whatever their settings. */
export function sameStage(a: StageDoc, b: StageDoc | undefined): boolean {
  if (a === b) return true
  if (!b || a.id !== b.id || a.kind !== b.kind) return false
  return a.on || b.on ? JSON.stringify(a) === JSON.stringify(b) : true
}

/** Whether two chains have the same stages in the same order, and do the same to any sound. */
export function sameSound(a: ChainDoc, b: ChainDoc): boolean {
  return a.stages.length === b.stages.length && a.stages.every((stage, k) => sameStage(stage, b.stages[k]))
}
