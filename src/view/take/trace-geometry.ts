import { line } from 'd3-shape'
import type { Trace } from '../../core'
import type { TimeView } from './time-view'

/** The strongest gain reduction in one column of the picture. */
export interface TracePoint {
  readonly x: number
  readonly gainDb: number
}

/** What of a trace is seen, one point a column of `columnPx`: the lowest gain in it, so that no peak is lost. */
export function tracePoints(
  { hopFrames, gainDb }: Trace,
  view: TimeView,
  widthPx: number,
  columnPx: number,
): readonly TracePoint[] {
  if (!(widthPx > 0)) return []
  const hopsPerColumn = (((view.to - view.from) / widthPx) * columnPx) / hopFrames
  const points: TracePoint[] = []
  for (let x = 0; x < widthPx; x += columnPx) {
    const hop = view.from / hopFrames + (x / columnPx) * hopsPerColumn
    const first = Math.floor(hop)
    const end = Math.min(gainDb.length, Math.max(first + 1, Math.ceil(hop + hopsPerColumn)))
    if (first >= end) break
    let lowest = 0
    for (let i = first; i < end; i++) lowest = Math.min(lowest, gainDb[i] ?? 0)
    points.push({ x: x + columnPx / 2, gainDb: lowest })
  }
  return points
}

/** The range of a lane, dB: 12, or as many steps of 6 as the deepest reduction needs. */
export function traceRangeDb(mostDb: number): number {
  return Math.max(12, Math.ceil(mostDb / 6) * 6)
}

/** The trace hanging down from 0 dB: the filled area, and the line along its lower edge. */
export function tracePaths(points: readonly TracePoint[], heightPx: number, rangeDb: number) {
  const y = ({ gainDb }: TracePoint) => Math.min(1, -gainDb / rangeDb) * (heightPx - 1) + 0.5
  const edge =
    line<TracePoint>()
      .x((point) => point.x)
      .y(y)
      .digits(1)(points) ?? ''
  const [first, last] = [points[0], points.at(-1)]
  return { area: first && last ? `${edge}L${last.x},0.5L${first.x},0.5Z` : '', edge }
}
