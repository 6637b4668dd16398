import { type DetectorLevel, plain, SILENT_DBFS } from '../../../core'
import { type ScaleTick, stepFor } from '../lanes/scale-ticks'
import type { TimeView } from '../time/time-view'

/** Levels of the scale are whole steps of this, dB. */
const STEP_DB = 6
/** At least so much is seen below the threshold and above the highest level, dB. */
const AIR_DB = 3
/** From the top of the lane to its foot at least, dB. */
const LEAST_RANGE_DB = 42

/** The levels at the top and the foot of the lane, dBFS. */
export interface LevelRange {
  readonly highDbfs: number
  readonly lowDbfs: number
}

/** A range that shows the highest level of a take, and the threshold with some level below it, in whole steps. */
export function levelRange(highestDbfs: number, thresholdDb: number): LevelRange {
  const highest = Math.max(highestDbfs > SILENT_DBFS ? highestDbfs : thresholdDb, thresholdDb)
  const highDbfs = Math.ceil((highest + AIR_DB) / STEP_DB) * STEP_DB
  const below = Math.floor((thresholdDb - AIR_DB) / STEP_DB) * STEP_DB
  return { highDbfs, lowDbfs: Math.min(below, highDbfs - LEAST_RANGE_DB) }
}

/** How far down the lane a level stands: 0 at the top, 1 at the foot, never outside. */
export function depthOf(dbfs: number, { highDbfs, lowDbfs }: LevelRange): number {
  return Math.min(1, Math.max(0, (highDbfs - dbfs) / (highDbfs - lowDbfs)))
}

/** Labels from the top of the lane down, in steps whose labels do not touch. */
export function levelTicks(range: LevelRange, heightPx: number, labelPx: number): readonly ScaleTick[] {
  const { highDbfs, lowDbfs } = range
  const step = stepFor([STEP_DB, 2 * STEP_DB, 4 * STEP_DB], highDbfs - lowDbfs, heightPx, labelPx)
  const count = Math.floor((highDbfs - lowDbfs) / step) + 1
  const ticks = Array.from({ length: count }, (_, i) => highDbfs - i * step)
  return ticks.map((dbfs) => ({ y: depthOf(dbfs, range) * heightPx, label: plain(dbfs, 0) }))
}

/** The highest level of each of `count` columns of a view, dBFS, so that no peak is lost; silent behind the end. */
export function levelColumns(
  { hopFrames, levelDbfs }: DetectorLevel,
  view: TimeView,
  count: number,
): Float32Array {
  const columns = new Float32Array(count)
  const firstHop = view.from / hopFrames
  const hopsPerColumn = (view.to - view.from) / hopFrames / count
  for (let column = 0; column < count; column++) {
    const hop = firstHop + column * hopsPerColumn
    const end = Math.min(levelDbfs.length, Math.ceil(hop + hopsPerColumn))
    let highest = SILENT_DBFS
    for (let i = Math.floor(hop); i < end; i++) highest = Math.max(highest, levelDbfs[i] ?? SILENT_DBFS)
    columns[column] = highest
  }
  return columns
}

/** The highest level of all, dBFS. */
export function highestLevel({ levelDbfs }: DetectorLevel): number {
  return levelDbfs.reduce((highest, db) => Math.max(highest, db), SILENT_DBFS)
}
