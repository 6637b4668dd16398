import type { Trace } from '../../../core'
import type { HopRange } from '../../../session/live-trace'
import type { TimeView } from '../time/time-view'

/** Columns of a picture, end not included. */
export interface ColumnRange {
  readonly from: number
  readonly to: number
}

/**
 * Writes what of a trace is seen into `columns`, one value for each column of the whole view: the lowest gain in it,
 * dB, so that no peak is lost; 0 behind the end. Only those in `range` are worked out.
 */
export function fillColumns(
  columns: Float32Array,
  { hopFrames, gainDb }: Trace,
  view: TimeView,
  { from, to }: ColumnRange,
): void {
  const firstHop = view.from / hopFrames
  const hopsPerColumn = (view.to - view.from) / hopFrames / columns.length
  for (let column = from; column < to; column++) {
    const hop = firstHop + column * hopsPerColumn
    const end = Math.min(gainDb.length, Math.ceil(hop + hopsPerColumn))
    let lowest = 0
    for (let i = Math.floor(hop); i < end; i++) lowest = Math.min(lowest, gainDb[i] ?? 0)
    columns[column] = lowest
  }
}

/** The columns, of `count` that a view has, in which these hops are seen. */
export function columnsOf(hops: HopRange, hopFrames: number, view: TimeView, count: number): ColumnRange {
  const columnOf = (hop: number) => ((hop * hopFrames - view.from) / (view.to - view.from)) * count
  // One more at each end: where a hop begins between two columns both show it.
  const within = (column: number) => Math.min(count, Math.max(0, column))
  return { from: within(Math.floor(columnOf(hops.from)) - 1), to: within(Math.ceil(columnOf(hops.to)) + 1) }
}

/** The range of a lane, dB: 12, or as many steps of 6 as the deepest reduction needs. */
export function traceRangeDb(maxDb: number): number {
  return Math.max(12, Math.ceil(maxDb / 6) * 6)
}

/** How a trace is laid out on its picture, device pixels: 0 dB at the top, `rangeDb` at the foot. */
export interface TraceLayout {
  readonly widthPx: number
  readonly heightPx: number
  /** Even, so that the middle of a column lies between two pixels. */
  readonly columnPx: number
  /** Thickness of the line at 0 dB, and of the line along the trace. */
  readonly zeroPx: number
  readonly linePx: number
  readonly rangeDb: number
}

/** The pixels, from left to right, on which something changes with these columns; end not included. */
export function pixelsOf({ from, to }: ColumnRange, { widthPx, columnPx, linePx }: TraceLayout): ColumnRange {
  const reach = columnPx / 2 + Math.ceil(linePx)
  return { from: Math.max(0, from * columnPx - reach), to: Math.min(widthPx, to * columnPx + reach) }
}

/** A piece of the line along the lower edge of a trace: what hangs above it is tinted. Its sides are whole pixels. */
export interface EdgePiece {
  readonly x: number
  width: number
  readonly top: number
  readonly bottom: number
}

/**
 * The line along the lower edge of the trace, from the middle of one column straight to that of the next, as a square
 * pen draws it: pixel by pixel upright bars that overlap, so that it never breaks; those that are the same are one.
 */
export function edgePieces(
  columns: Float32Array,
  layout: TraceLayout,
  { from, to }: ColumnRange,
): EdgePiece[] {
  const { heightPx, columnPx, zeroPx, linePx, rangeDb } = layout
  // One line lies on the middle of the other.
  const highest = (zeroPx - linePx) / 2
  const yOf = (column: number) => {
    const gainDb = columns[Math.min(columns.length - 1, Math.max(0, column))] ?? 0
    return highest + Math.min(1, -gainDb / rangeDb) * (heightPx - linePx - highest)
  }
  const yAt = (x: number) => {
    const place = x / columnPx - 0.5
    const column = Math.floor(place)
    const before = yOf(column)
    return before + (yOf(column + 1) - before) * (place - column)
  }
  const pen = Math.max(1, Math.round(linePx))
  const penLeft = Math.floor((pen - 1) / 2)
  const pieces: EdgePiece[] = []
  for (let x = from; x < to; x++) {
    let top = heightPx
    let lowest = highest
    for (let at = x - penLeft; at <= x - penLeft + pen; at++) {
      top = Math.min(top, yAt(at))
      lowest = Math.max(lowest, yAt(at))
    }
    const bottom = lowest + linePx
    const last = pieces.at(-1)
    if (last && last.top === top && last.bottom === bottom) last.width++
    else pieces.push({ x, width: 1, top, bottom })
  }
  return pieces
}
