import { area, line } from 'd3-shape'
import { type PeakPyramid, peakLevelFor } from '../../../core'
import type { RangeSamples } from '../samples/use-range-samples'
import { type TimeView, xOfFrame } from '../time/time-view'
import { type Column, waveY } from './wave-scale'

/** What of the wave is seen, one column each pixel: a handful of points however long the take is. */
export function waveColumns(peaks: PeakPyramid, view: TimeView, widthPx: number): readonly Column[] {
  const level = peakLevelFor(peaks, framesPerPixel(view, widthPx))
  if (!level) return []
  const { framesPerPeak, min, max } = level
  return columnsOver(view, widthPx, framesPerPeak, 0, min.length, (i, column) => {
    if ((min[i] ?? 0) < column.min) column.min = min[i] ?? 0
    if ((max[i] ?? 0) > column.max) column.max = max[i] ?? 0
  })
}

/** The same from the samples themselves, over all channels. */
export function sampleColumns(
  { from, channels }: RangeSamples,
  view: TimeView,
  widthPx: number,
): readonly Column[] {
  const end = from + (channels[0]?.length ?? 0)
  return columnsOver(view, widthPx, 1, from, end, (frame, column) => {
    for (const samples of channels) {
      const value = samples[frame - from] ?? 0
      if (value < column.min) column.min = value
      if (value > column.max) column.max = value
    }
  })
}

/** One column each pixel over points of so many frames each, of which there are those from `firstPoint` to `lastPoint`. */
function columnsOver(
  view: TimeView,
  widthPx: number,
  framesPerPoint: number,
  firstPoint: number,
  lastPoint: number,
  widen: (point: number, column: { min: number; max: number }) => void,
): readonly Column[] {
  const perColumn = framesPerPixel(view, widthPx)
  const columns: Column[] = []
  for (let x = 0; x < widthPx; x++) {
    const frame = view.from + x * perColumn
    // Columns that share a point both show it: none is lost at the seams, nor at the end.
    const seen = Math.floor(frame / framesPerPoint)
    const first = Math.max(firstPoint, seen)
    const end = Math.min(lastPoint, Math.max(seen + 1, Math.ceil((frame + perColumn) / framesPerPoint)))
    if (first >= end) continue
    const column = { x: x + 0.5, min: Number.POSITIVE_INFINITY, max: Number.NEGATIVE_INFINITY }
    for (let point = first; point < end; point++) widen(point, column)
    columns.push(column)
  }
  return columns
}

/** How many frames of a view go to a pixel. */
export function framesPerPixel({ from, to }: TimeView, widthPx: number): number {
  return (to - from) / Math.max(1, widthPx)
}

/**
 * The wave as a closed SVG path about the middle of `heightPx`; at least a hairline thick, so that silence shows.
 * @param fullScale the sample value that reaches the edge
 */
export function wavePath(columns: readonly Column[], heightPx: number, fullScale: number): string {
  const middle = heightPx / 2
  const shape = area<Column>()
    .x((column) => column.x)
    .y0((column) => Math.min(heightPx, Math.max(middle + 0.5, waveY(column.min, fullScale, heightPx))))
    .y1((column) => Math.max(0, Math.min(middle - 0.5, waveY(column.max, fullScale, heightPx))))
    .digits(1)
  return shape(columns) ?? ''
}

/** Each channel as a line from sample to sample, where cycles are seen singly. */
export function sampleLines(
  { from, channels }: RangeSamples,
  view: TimeView,
  widthPx: number,
  heightPx: number,
  fullScale: number,
): string {
  const first = Math.max(0, Math.floor(view.from) - from)
  return channels
    .map((samples) => {
      const end = Math.min(samples.length, Math.ceil(view.to) - from + 1)
      const points: [number, number][] = []
      for (let i = first; i < end; i++)
        points.push([
          xOfFrame(view, from + i, widthPx),
          Math.min(heightPx, Math.max(0, waveY(samples[i] ?? 0, fullScale, heightPx))),
        ])
      return line().digits(2)(points) ?? ''
    })
    .join('')
}
