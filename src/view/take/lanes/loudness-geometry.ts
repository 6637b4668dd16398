import { line } from 'd3-shape'
import { type LoudnessOverTime, plain } from '../../../core'
import { type TimeView, xOfFrame } from '../time/time-view'
import { LABEL_PX, type ScaleTick, stepFor } from './scale-ticks'

/** Bottom and top of the lane, LUFS. */
export interface LoudnessRange {
  readonly lowLufs: number
  readonly highLufs: number
}

/** What is quieter than the average of all that is above the absolute gate by more is gated (ITU-R BS.1770-5), LU. */
const RELATIVE_GATE_LU = -10
/** No less is shown, so that what hardly changes is not blown up, LU. */
const LEAST_RANGE_LU = 6
/** Where nothing is measurable. */
const NO_RANGE: LoudnessRange = { lowLufs: -30, highLufs: -18 }
/** The window of short-term loudness, seconds (EBU Tech 3341). */
export const WINDOW_SECONDS = 3

/** The range, in whole LUFS, of a lane in which nothing of these curves that is above its gate falls off. */
export function loudnessRange(curves: readonly LoudnessOverTime[]): LoudnessRange {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const { shortTermLufs } of curves) {
    const gateLufs = relativeGate(shortTermLufs)
    for (const lufs of shortTermLufs) {
      if (!(lufs > gateLufs)) continue
      if (lufs < low) low = lufs
      if (lufs > high) high = lufs
    }
  }
  if (low > high) return NO_RANGE
  const highLufs = Math.ceil(high)
  return { lowLufs: Math.min(Math.floor(low), highLufs - LEAST_RANGE_LU), highLufs }
}

/** The relative gate of a curve, LUFS; what is not measurable is below the absolute gate already. */
function relativeGate(lufs: Float32Array): number {
  let power = 0
  let count = 0
  for (const value of lufs) {
    if (Number.isNaN(value)) continue
    power += 10 ** (value / 10)
    count++
  }
  return 10 * Math.log10(power / count) + RELATIVE_GATE_LU
}

/** Down from the top of the lane, pixels; what is below its range lies on its foot. */
function loudnessY(lufs: number, { lowLufs, highLufs }: LoudnessRange, heightPx: number): number {
  const share = (highLufs - lufs) / (highLufs - lowLufs)
  return Math.min(1, share) * (heightPx - 2) + 1
}

/** Steps of labels that are counted easily, LU. */
const STEPS_LU = [1, 2, 3, 6, 12, 24]

/** Labels at round values. */
export function loudnessTicks(
  range: LoudnessRange,
  heightPx: number,
  labelPx = LABEL_PX,
): readonly ScaleTick[] {
  const step = stepFor(STEPS_LU, range.highLufs - range.lowLufs, heightPx, labelPx)
  const first = Math.floor(range.highLufs / step) * step
  const count = Math.floor((first - range.lowLufs) / step) + 1
  return Array.from({ length: count }, (_, i) => {
    const lufs = first - i * step
    return { y: loudnessY(lufs, range, heightPx), label: plain(lufs, 0) }
  })
}

/**
 * Short-term loudness in the seen stretch as an SVG path, from where the first window is full: without a gap, on the
 * foot of the lane where it is below its range. Empty where nothing is measurable.
 */
export function loudnessPath(
  { hopSeconds, shortTermLufs }: LoudnessOverTime,
  view: TimeView,
  sampleRate: number,
  widthPx: number,
  heightPx: number,
  range: LoudnessRange,
): string {
  if (shortTermLufs.every(Number.isNaN)) return ''
  const hopFrames = hopSeconds * sampleRate
  const firstFull = Math.ceil(WINDOW_SECONDS / hopSeconds - ROUNDING_HOPS)
  const first = Math.max(firstFull, Math.floor(view.from / hopFrames))
  const end = Math.min(shortTermLufs.length, Math.ceil(view.to / hopFrames) + 1)
  // More points than pixels say nothing more: a window of 3 s moves slowly.
  const stride = Math.max(1, Math.floor((end - first) / Math.max(1, widthPx)))
  const points: [number, number][] = []
  for (let i = first; i < end; i += stride) {
    const lufs = shortTermLufs[i] ?? Number.NaN
    const y = loudnessY(Number.isNaN(lufs) ? range.lowLufs : lufs, range, heightPx)
    points.push([xOfFrame(view, i * hopFrames, widthPx), y])
  }
  return line().digits(1)(points) ?? ''
}

/** 3 s by a hop of 0.1 s is not 30 to the last bit. */
const ROUNDING_HOPS = 1e-6
