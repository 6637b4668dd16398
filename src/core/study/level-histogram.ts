import type { DetectorLevel } from '../chain/detector-level'
import { SILENT_DBFS } from '../chain/detector-level'

/** How often a level occurs along a take. */
export interface LevelHistogram {
  readonly fromDbfs: number
  readonly binDb: number
  /** Of the hops that are not silent, the share in each bin, from the lowest up; levels outside count in no bin. */
  readonly shares: Float64Array
}

/** Share of the hops of `level` in each of the bins of `binDb` from `fromDbfs` to `toDbfs`. */
export function levelHistogram(
  { levelDbfs }: DetectorLevel,
  fromDbfs: number,
  toDbfs: number,
  binDb: number,
): LevelHistogram {
  const counts = new Float64Array(Math.round((toDbfs - fromDbfs) / binDb))
  let sounding = 0
  for (let hop = 0; hop < levelDbfs.length; hop++) {
    const db = levelDbfs[hop] ?? SILENT_DBFS
    if (db <= SILENT_DBFS) continue
    sounding++
    const bin = Math.floor((db - fromDbfs) / binDb)
    if (bin >= 0 && bin < counts.length) counts[bin] = (counts[bin] ?? 0) + 1
  }
  return { fromDbfs, binDb, shares: counts.map((count) => count / Math.max(1, sounding)) }
}

/** Share of the hops that are not silent in which `level` exceeds `thresholdDb`; 0 where all are silent. */
export function shareAbove({ levelDbfs }: DetectorLevel, thresholdDb: number): number {
  let sounding = 0
  let above = 0
  for (let hop = 0; hop < levelDbfs.length; hop++) {
    const db = levelDbfs[hop] ?? SILENT_DBFS
    if (db > SILENT_DBFS) sounding++
    if (db > thresholdDb) above++
  }
  return sounding === 0 ? 0 : above / sounding
}
