import { frameCount, type Sound } from '../../sound/sound'
import { finished, partOf, STEP_FRAMES, type Steps } from '../../sound/steps'

/** Lowest and highest sample of each run of `framesPerPeak` frames, over all channels. */
export interface PeakLevel {
  readonly framesPerPeak: number
  readonly min: Float32Array
  readonly max: Float32Array
}

/** Finest level first; each further one is four times as coarse. */
export type PeakPyramid = readonly PeakLevel[]

const FINEST_FRAMES = 64
const COARSER_BY = 4
/** A level with so few peaks is the last. */
const FEWEST_PEAKS = 256
/** How much of the work the finest level is. */
const FINEST_PART = 0.95

/** Minima and maxima at several scales, so that a picture of any stretch of a long take is drawn from few points. */
export function peakPyramid(sound: Sound): PeakPyramid {
  return finished(peakPyramidSteps(sound))
}

/** {@link peakPyramid} in steps. */
export function* peakPyramidSteps(sound: Sound): Steps<PeakPyramid> {
  const levels: PeakLevel[] = [yield* partOf(finestSteps(sound), 0, FINEST_PART)]
  let done = FINEST_PART
  for (let level = levels[0]; level && level.min.length > FEWEST_PEAKS; level = levels.at(-1)) {
    const next = 1 - (1 - done) / COARSER_BY
    levels.push(yield* partOf(coarserSteps(level), done, next))
    done = next
  }
  return levels
}

/** The coarsest level that still has at least one peak for each `framesPerPixel`; the finest if none has. */
export function peakLevelFor(pyramid: PeakPyramid, framesPerPixel: number): PeakLevel | undefined {
  return pyramid.findLast(({ framesPerPeak }) => framesPerPeak <= framesPerPixel) ?? pyramid[0]
}

function* finestSteps(sound: Sound): Steps<PeakLevel> {
  const count = Math.ceil(frameCount(sound) / FINEST_FRAMES)
  const min = new Float32Array(count)
  const max = new Float32Array(count)
  const stepPeaks = STEP_FRAMES / FINEST_FRAMES
  for (const [channel, samples] of sound.channels.entries()) {
    for (let from = 0; from < count; from += stepPeaks) {
      const to = Math.min(count, from + stepPeaks)
      for (let i = from; i < to; i++) widen(min, max, i, samples, channel === 0)
      yield (channel + to / count) / sound.channels.length
    }
  }
  return { framesPerPeak: FINEST_FRAMES, min, max }
}

/** Takes the samples of run `i` into its minimum and maximum; the first channel begins them. */
function widen(
  min: Float32Array,
  max: Float32Array,
  i: number,
  samples: Float32Array,
  isFirst: boolean,
): void {
  const start = i * FINEST_FRAMES
  const end = Math.min(samples.length, start + FINEST_FRAMES)
  let low = isFirst ? (samples[start] ?? 0) : (min[i] ?? 0)
  let high = isFirst ? low : (max[i] ?? 0)
  for (let n = start; n < end; n++) {
    const value = samples[n] ?? 0
    if (value < low) low = value
    else if (value > high) high = value
  }
  min[i] = low
  max[i] = high
}

function* coarserSteps(fine: PeakLevel): Steps<PeakLevel> {
  const count = Math.ceil(fine.min.length / COARSER_BY)
  const min = new Float32Array(count)
  const max = new Float32Array(count)
  const stepPeaks = STEP_FRAMES / COARSER_BY
  for (let from = 0; from < count; from += stepPeaks) {
    const to = Math.min(count, from + stepPeaks)
    for (let i = from; i < to; i++) gather(min, max, i, fine)
    yield to / count
  }
  return { framesPerPeak: fine.framesPerPeak * COARSER_BY, min, max }
}

/** Minimum and maximum `i` from those of the finer level that it spans. */
function gather(min: Float32Array, max: Float32Array, i: number, fine: PeakLevel): void {
  const start = i * COARSER_BY
  const end = Math.min(fine.min.length, start + COARSER_BY)
  let low = fine.min[start] ?? 0
  let high = fine.max[start] ?? 0
  for (let n = start + 1; n < end; n++) {
    low = Math.min(low, fine.min[n] ?? 0)
    high = Math.max(high, fine.max[n] ?? 0)
  }
  min[i] = low
  max[i] = high
}
