import { area } from 'd3-shape'
import { type PeakPyramid, peakLevelFor } from '../../../core'
import type { TimeView } from '../time/time-view'

/** The lowest and highest sample of one column of the picture. */
export interface Column {
  readonly x: number
  readonly min: number
  readonly max: number
}

/** What of the wave is seen, one column each `columnPx` pixels: a handful of points however long the take is. */
export function waveColumns(
  peaks: PeakPyramid,
  view: TimeView,
  widthPx: number,
  columnPx: number,
): readonly Column[] {
  const framesPerColumn = ((view.to - view.from) / widthPx) * columnPx
  const level = peakLevelFor(peaks, framesPerColumn)
  if (!level || !(widthPx > 0)) return []
  const { framesPerPeak, min, max } = level
  const columns: Column[] = []
  for (let x = 0; x < widthPx; x += columnPx) {
    const frame = view.from + (x / columnPx) * framesPerColumn
    // Columns that share a peak both show it: none is lost at the seams, nor at the end.
    const first = Math.floor(frame / framesPerPeak)
    const end = Math.min(
      min.length,
      Math.max(first + 1, Math.ceil((frame + framesPerColumn) / framesPerPeak)),
    )
    if (first >= end) break
    let low = Number.POSITIVE_INFINITY
    let high = Number.NEGATIVE_INFINITY
    for (let i = first; i < end; i++) {
      low = Math.min(low, min[i] ?? 0)
      high = Math.max(high, max[i] ?? 0)
    }
    columns.push({ x: x + columnPx / 2, min: low, max: high })
  }
  return columns
}

/**
 * The wave as a closed SVG path about the middle of `heightPx`; at least a hairline thick, so that silence shows.
 * @param fullScale the sample value that reaches the edge
 */
export function wavePath(columns: readonly Column[], heightPx: number, fullScale: number): string {
  const middle = heightPx / 2
  const y = (value: number) => middle - (value / fullScale) * (middle - 1)
  const shape = area<Column>()
    .x((column) => column.x)
    .y0((column) => Math.min(heightPx, Math.max(middle + 0.5, y(column.min))))
    .y1((column) => Math.max(0, Math.min(middle - 0.5, y(column.max))))
    .digits(1)
  return shape(columns) ?? ''
}

/** Quieter takes than this are not blown up any further, dBFS. */
const LEAST_FULL_HEIGHT_DBFS = -36
const HEIGHT_STEP_DB = 6

/**
 * The level that fills a lane in which all of these peaks, in dBTP, find room, dBFS: the next whole step of 6 dB above
 * them. 0 where none is known.
 */
export function fullHeightDbfs(truePeaksDbtp: readonly (number | null | undefined)[]): number {
  const known = truePeaksDbtp.filter((peakDbtp) => peakDbtp !== null && peakDbtp !== undefined)
  const highestDbtp = known.length > 0 ? Math.max(...known) : 0
  const step = Math.ceil(highestDbtp / HEIGHT_STEP_DB) * HEIGHT_STEP_DB
  // No minus before a nought.
  return Math.max(LEAST_FULL_HEIGHT_DBFS, step) + 0
}
