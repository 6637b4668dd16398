import { reductionDb, type StaticCurve } from '../../../core'

/** The highest level drawn, dBFS in and out. */
export const HIGHEST_DBFS = 0

const USUAL_LOWEST_DBFS = -60
const LOWEST_DBFS = -80

/** The lowest level drawn, dBFS: further down for low thresholds, so that there is some line before the corner. */
export function lowestShownDbfs({ thresholdDb, kneeDb }: StaticCurve): number {
  return thresholdDb - kneeDb / 2 < USUAL_LOWEST_DBFS + 6 ? LOWEST_DBFS : USUAL_LOWEST_DBFS
}

/** Above any level a reduction can come from. */
const SEARCH_TOP_DBFS = 40

/** Points of the curve from the lowest level drawn to the highest, one for each dB and one at each end of the knee. */
export function staticCurvePoints(curve: StaticCurve): [inDb: number, outDb: number][] {
  const { thresholdDb, kneeDb } = curve
  const lowest = lowestShownDbfs(curve)
  const levels = Array.from({ length: HIGHEST_DBFS - lowest + 1 }, (_, i) => lowest + i)
  const corners = [thresholdDb - kneeDb / 2, thresholdDb, thresholdDb + kneeDb / 2]
  return [...levels, ...corners.filter((level) => level > lowest && level < HIGHEST_DBFS)]
    .sort((a, b) => a - b)
    .map((level) => [level, outputDbfs(level, curve)])
}

/** The level, dBFS, that comes out at a level that goes in, once the gain has settled. */
export function outputDbfs(inDbfs: number, curve: StaticCurve): number {
  return inDbfs - reductionDb(inDbfs, curve)
}

/**
 * The input level, dBFS, at which the static curve gives a reduction in dB, found by bisection; null where it never does
 * (no reduction, or a ratio of 1:1).
 */
export function levelOfReduction(curve: StaticCurve, reduction: number): number | null {
  if (reduction <= 0 || reductionDb(SEARCH_TOP_DBFS, curve) < reduction) return null
  let low = LOWEST_DBFS - curve.kneeDb
  let high = SEARCH_TOP_DBFS
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2
    if (reductionDb(middle, curve) < reduction) low = middle
    else high = middle
  }
  return (low + high) / 2
}
