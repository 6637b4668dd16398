import { frameCount, type Sound } from '../../sound/sound'

/** Lowest and highest sample of each run of `framesPerPeak` frames, over all channels. */
export interface PeakLevel {
  readonly framesPerPeak: number
  readonly min: Float32Array
  readonly max: Float32Array
}

/** Finest level first; each further one is four times as coarse. */
export type PeakPyramid = readonly PeakLevel[]

const FINEST_FRAMES = 64
const STEP = 4

/** Minima and maxima at several scales, so that a picture of any stretch of a long take is drawn from few points. */
export function peakPyramid(sound: Sound): PeakPyramid {
  const levels: PeakLevel[] = [finest(sound)]
  for (let level = levels[0]; level && level.min.length > 256; level = levels.at(-1))
    levels.push(coarser(level))
  return levels
}

/** The coarsest level that still has at least one peak for each `framesPerPixel`; the finest if none has. */
export function peakLevelFor(pyramid: PeakPyramid, framesPerPixel: number): PeakLevel | undefined {
  return pyramid.findLast(({ framesPerPeak }) => framesPerPeak <= framesPerPixel) ?? pyramid[0]
}

function finest(sound: Sound): PeakLevel {
  const count = Math.ceil(frameCount(sound) / FINEST_FRAMES)
  const min = new Float32Array(count)
  const max = new Float32Array(count)
  for (const [channel, samples] of sound.channels.entries()) {
    for (let i = 0; i < count; i++) {
      const end = Math.min(samples.length, (i + 1) * FINEST_FRAMES)
      let low = channel === 0 ? (samples[i * FINEST_FRAMES] ?? 0) : (min[i] ?? 0)
      let high = channel === 0 ? low : (max[i] ?? 0)
      for (let n = i * FINEST_FRAMES; n < end; n++) {
        const value = samples[n] ?? 0
        if (value < low) low = value
        else if (value > high) high = value
      }
      min[i] = low
      max[i] = high
    }
  }
  return { framesPerPeak: FINEST_FRAMES, min, max }
}

function coarser({ framesPerPeak, min, max }: PeakLevel): PeakLevel {
  const count = Math.ceil(min.length / STEP)
  const lowest = new Float32Array(count)
  const highest = new Float32Array(count)
  for (let i = 0; i < count; i++) {
    const end = Math.min(min.length, (i + 1) * STEP)
    let low = min[i * STEP] ?? 0
    let high = max[i * STEP] ?? 0
    for (let n = i * STEP + 1; n < end; n++) {
      low = Math.min(low, min[n] ?? 0)
      high = Math.max(high, max[n] ?? 0)
    }
    lowest[i] = low
    highest[i] = high
  }
  return { framesPerPeak: framesPerPeak * STEP, min: lowest, max: highest }
}
