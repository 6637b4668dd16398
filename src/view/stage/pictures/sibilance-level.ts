import type { SibilanceDetection } from '../../../core'
import { levelOfReduction } from './static-curve'

/** A level above the crossover, as a de-esser's gain reduction shows it. */
export interface MetLevel {
  readonly levelDbfs: number
  /** It reduced by all of its range: the level may have been higher. */
  readonly orMore: boolean
}

/** This close to the range counts as all of it, dB. */
const NEAR_DB = 0.05

/**
 * The level, dBFS, at which a de-esser reduces by `gainReductionDb` once its attack is over; null where it reduces
 * nothing, or never does.
 */
export function levelMet(detection: SibilanceDetection, gainReductionDb: number): MetLevel | null {
  const levelDbfs = levelOfReduction(detection, Math.min(gainReductionDb, detection.rangeDb))
  return levelDbfs === null ? null : { levelDbfs, orMore: gainReductionDb > detection.rangeDb - NEAR_DB }
}
