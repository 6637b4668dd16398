import { dbToGain, gainToDb, plain } from '../../../core'
import { LABEL_PX, type ScaleTick } from './scale-ticks'

/** The lowest and highest sample of one column of the picture. */
export interface Column {
  readonly x: number
  readonly min: number
  readonly max: number
}

/** The height of the lane goes in such steps, so that it stays as it is from one page of the take to the next. */
const HEIGHT_STEP_DB = 2
/** What is quieter is not blown up any further, dBFS: below it lies the noise of good microphones. */
const LEAST_HEIGHT_DBFS = -72
/** Labels beneath the highest stand at multiples of this: each is half as high as the one before. */
const LABEL_STEP_DB = 6

/** The level that fills the lane, dBFS: the next whole step of 2 dB above all that is seen. 0 where nothing is. */
export function fullHeightDbfs(seen: readonly (readonly Column[])[]): number {
  let peak = 0
  for (const columns of seen) peak = Math.max(peak, Math.abs(loudestOf(columns)?.value ?? 0))
  if (seen.every((columns) => columns.length === 0)) return 0
  const step = Math.ceil((gainToDb(peak) - ROUNDING_DB) / HEIGHT_STEP_DB) * HEIGHT_STEP_DB
  // No minus before a nought.
  return Math.max(LEAST_HEIGHT_DBFS, step) + 0
}

/** 32-bit samples may lie this much beside the level that they stand for. */
const ROUNDING_DB = 1e-5

/** Where a sample value stands, down from the top of the lane, pixels. */
export function waveY(value: number, fullScale: number, heightPx: number): number {
  const middle = heightPx / 2
  return middle - (value / fullScale) * (middle - 1)
}

/** Levels at the upper half of the lane: the one that fills it, and others below it as far as there is room. */
export function waveTicks(heightDbfs: number, heightPx: number, labelPx = LABEL_PX): readonly ScaleTick[] {
  const fullScale = dbToGain(heightDbfs)
  const at = (dbfs: number): ScaleTick => ({
    y: waveY(dbToGain(dbfs), fullScale, heightPx),
    label: plain(dbfs, 0),
  })
  const ticks = [at(heightDbfs)]
  const middle = heightPx / 2
  const first = Math.ceil(heightDbfs / LABEL_STEP_DB - 1) * LABEL_STEP_DB
  for (let tick = at(first), dbfs = first; tick.y < middle - labelPx; ) {
    if (tick.y - (ticks.at(-1)?.y ?? 0) >= labelPx) ticks.push(tick)
    dbfs -= LABEL_STEP_DB
    tick = at(dbfs)
  }
  return ticks
}

/** A sample, and where it is. */
export interface Loudest {
  readonly x: number
  /** -1 to 1 at full scale. */
  readonly value: number
}

/** The sample furthest from 0, the first of such; null where there is none but silence. */
export function loudestOf(columns: readonly Column[]): Loudest | null {
  let loudest: Loudest | null = null
  for (const { x, min, max } of columns) {
    const value = -min > max ? min : max
    if (Math.abs(value) > Math.abs(loudest?.value ?? 0)) loudest = { x, value }
  }
  return loudest
}
