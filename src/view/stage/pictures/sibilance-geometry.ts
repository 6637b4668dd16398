import type { SibilantLevel } from '../../../core'

/** More than this many cannot be told apart in a picture. */
const MOST_SHOWN = 150
/** Levels of the scale are whole steps of this, dB. */
const STEP_DB = 6
/** At least so much above and below what is drawn, dB. */
const AIR_DB = 2
/** With nothing known, dBFS. */
const USUAL = { low: -60, high: 0 }

/** The levels from the lowest drawn to the highest, dBFS. */
export interface LevelScale {
  readonly low: number
  readonly high: number
}

/** Sibilants from the loudest down; of very many an even choice, the loudest among them. */
export function ranked(sibilants: readonly SibilantLevel[]): readonly SibilantLevel[] {
  const sorted = [...sibilants].sort((a, b) => b.levelDbfs - a.levelDbfs)
  if (sorted.length <= MOST_SHOWN) return sorted
  return Array.from(
    { length: MOST_SHOWN },
    (_, i) => sorted[Math.floor((i * sorted.length) / MOST_SHOWN)],
  ).flatMap((sibilant) => sibilant ?? [])
}

/** A scale that holds all levels of the sibilants and their vowels, as far as vowels are near them, and the threshold. */
export function sibilanceScale(sibilants: readonly SibilantLevel[], thresholdDb: number): LevelScale {
  if (sibilants.length === 0)
    return { low: Math.min(USUAL.low, down(thresholdDb)), high: Math.max(USUAL.high, up(thresholdDb)) }
  const levels = sibilants.map(({ levelDbfs }) => levelDbfs)
  const lowest = Math.min(...levels)
  const vowels = sibilants
    .flatMap(({ vowelDbfs }) => vowelDbfs ?? [])
    .filter((db) => db > lowest - 3 * STEP_DB)
  return {
    low: down(Math.min(lowest, thresholdDb, ...vowels)),
    high: up(Math.max(...levels, thresholdDb, ...vowels)),
  }
}

function down(db: number): number {
  return Math.floor((db - AIR_DB) / STEP_DB) * STEP_DB
}

function up(db: number): number {
  return Math.ceil((db + AIR_DB) / STEP_DB) * STEP_DB
}

/** Circles of one radius as one SVG path. */
export function circlesPath(centres: readonly (readonly [x: number, y: number])[], radius: number): string {
  const turn = `a${radius},${radius} 0 1,0`
  return centres
    .map(
      ([x, y]) =>
        `M${(x - radius).toFixed(1)},${y.toFixed(1)}${turn} ${2 * radius},0${turn} ${-2 * radius},0`,
    )
    .join('')
}
