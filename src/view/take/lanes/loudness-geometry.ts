import { line } from 'd3-shape'
import type { LoudnessOverTime } from '../../../core'
import { type TimeView, xOfFrame } from '../time/time-view'

/** Bottom and top of the lane, LUFS. */
export interface LoudnessRange {
  readonly lowLufs: number
  readonly highLufs: number
}

/** Room for a voice between its quietest and its loudest phrase, LU; and for the quieter side, beneath its loudest. */
const RANGE_LU = 24
const QUIETER_RANGE_LU = 12
const STEP_LU = 6
/** A side whose loudest is below this, LUFS, gets no room of its own: there is all but nothing of it. */
const QUIETEST_LUFS = -60

/**
 * The range of a lane that shows several curves: from the next step above the loudest of them 24 LU down, or further
 * where the loudest of another curve is that much quieter.
 */
export function loudnessRange(curves: readonly LoudnessOverTime[]): LoudnessRange {
  const loudest = curves.map(loudestOf).filter((lufs) => lufs > QUIETEST_LUFS)
  const highLufs = Math.ceil(Math.max(QUIETEST_LUFS, ...loudest) / STEP_LU) * STEP_LU
  const quieterLufs = Math.floor((Math.min(highLufs, ...loudest) - QUIETER_RANGE_LU) / STEP_LU) * STEP_LU
  return { lowLufs: Math.min(highLufs - RANGE_LU, quieterLufs), highLufs }
}

function loudestOf({ shortTermLufs }: LoudnessOverTime): number {
  let most = Number.NEGATIVE_INFINITY
  for (const value of shortTermLufs) if (value > most) most = value
  return most
}

/** Short-term loudness in the seen stretch as an SVG path; gaps where it is not measurable. */
export function loudnessPath(
  { hopSeconds, shortTermLufs }: LoudnessOverTime,
  view: TimeView,
  sampleRate: number,
  widthPx: number,
  heightPx: number,
  { lowLufs, highLufs }: LoudnessRange,
): string {
  const hopFrames = hopSeconds * sampleRate
  const first = Math.max(0, Math.floor(view.from / hopFrames))
  const end = Math.min(shortTermLufs.length, Math.ceil(view.to / hopFrames) + 1)
  // More points than pixels say nothing more: a window of 3 s moves slowly.
  const stride = Math.max(1, Math.floor((end - first) / Math.max(1, widthPx)))
  const indices: number[] = []
  for (let i = first; i < end; i += stride) indices.push(i)
  const value = (i: number) => shortTermLufs[i] ?? Number.NaN
  const path = line<number>()
    .defined((i) => value(i) > lowLufs)
    .x((i) => xOfFrame(view, i * hopFrames, widthPx))
    .y((i) => ((highLufs - value(i)) / (highLufs - lowLufs)) * (heightPx - 2) + 1)
    .digits(1)
  return path(indices) ?? ''
}
