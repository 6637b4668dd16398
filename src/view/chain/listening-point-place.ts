import type { StageDoc } from '../../core'

/**
 * Position of the stage that the ear is after, from 0. After the last stage, or after one that is no longer there, is
 * the end; -1 while there are no stages.
 */
export function listeningPointIndexOf(stages: readonly StageDoc[], listeningPoint: string | null): number {
  const found = stages.findIndex(({ id }) => id === listeningPoint)
  return found < 0 ? stages.length - 1 : found
}
