import type { ChainDoc, SettingsByKind } from '../../core'
import { levelOfReduction } from './static-curve'

/** A level above the crossover that a de-esser met. */
export interface MetLevel {
  readonly levelDbfs: number
  /** It held back all that its range lets it: the level may have been higher. */
  readonly orMore: boolean
}

/** So near to the range counts as all of it, dB. */
const NEAR_DB = 0.05

/**
 * The level, dBFS, at which a de-esser holds back `heldDb` once its attack is over; null where it held nothing back, or
 * never does.
 */
export function levelMet(settings: SettingsByKind['de-esser'], heldDb: number): MetLevel | null {
  const levelDbfs = levelOfReduction(settings, Math.min(heldDb, settings.rangeDb))
  return levelDbfs === null ? null : { levelDbfs, orMore: heldDb > settings.rangeDb - NEAR_DB }
}

/**
 * The loudest level that a de-esser met along the take, as {@link levelMet}. It stays where it is while the threshold is
 * moved, for it is found by the settings that the reduction was measured with.
 * @param measured the chain that was measured
 * @param mostDb the most that the stage held back in it
 */
export function loudestMet(measured: ChainDoc, stageId: string, mostDb: number): MetLevel | null {
  const stage = measured.stages.find(({ id }) => id === stageId)
  return stage?.kind === 'de-esser' ? levelMet(stage.settings, mostDb) : null
}
