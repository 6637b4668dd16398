import { type ChainDoc, pictureOf, type SibilanceDetection } from '../../../core'
import { levelOfReduction } from '../../plot/static-curve'

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

/**
 * The loudest level above the crossover along the take, as {@link levelMet}. It does not move with the threshold, since
 * it comes from the settings that the reduction was measured with.
 * @param measured the chain that was measured
 * @param maxDb the stage's largest gain reduction in it
 */
export function loudestMet(measured: ChainDoc, stageId: string, maxDb: number): MetLevel | null {
  const stage = measured.stages.find(({ id }) => id === stageId)
  const picture = stage ? pictureOf(stage) : null
  return picture?.kind === 'sibilance' ? levelMet(picture.detection, maxDb) : null
}
