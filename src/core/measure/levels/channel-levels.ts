import { STEP_FRAMES, type Steps } from '../../sound/steps'
import { createRunPeaks, PEAK_RUN, type RunPeaks } from '../peaks/true-peak'
import { ClippedRuns, RAIL } from './clipped-runs'

/** Plain facts of one channel, all linear (full scale = 1). */
export interface ChannelLevels {
  readonly peak: number
  readonly meanSquare: number
  readonly mean: number
  readonly clippedSamples: number
  /** What `truePeakSteps` wants to know. */
  readonly runPeaks: RunPeaks
}

/**
 * Peak, mean square, mean and clipped samples of one channel, in steps; all 0 when it is empty.
 *
 * A sample is clipped when it belongs to a run of at least three samples of the same value at or beyond full
 * scale (to within one step of 15-bit sound). Samples of a float file that go beyond full scale and move on
 * are not clipped: turned down they are whole.
 */
export function* channelLevelSteps(samples: Float32Array): Steps<ChannelLevels> {
  const sums = new ChannelSums(samples.length)
  for (let from = 0; from < samples.length; from += STEP_FRAMES) {
    const to = Math.min(samples.length, from + STEP_FRAMES)
    sums.add(samples, from, to)
    yield (to / samples.length) * SUMS_PART
  }
  const { peak, runPeaks } = sums
  const clipped = new ClippedRuns()
  for (let from = 0; peak >= RAIL && from < samples.length; from += STEP_FRAMES) {
    const to = Math.min(samples.length, from + STEP_FRAMES)
    clipped.add(samples, from, to)
    yield SUMS_PART + (to / samples.length) * (1 - SUMS_PART)
  }
  const count = Math.max(1, samples.length)
  return {
    peak,
    meanSquare: sums.squares / count,
    mean: sums.sum / count,
    clippedSamples: clipped.count,
    runPeaks,
  }
}

/** How much of the work the sums are, where samples may be clipped. */
const SUMS_PART = 0.6

/** Sums and peaks of a channel, added up from its start on. Even and odd samples apart: two sums that do not wait for each other. */
class ChannelSums {
  private readonly peaks: Float32Array
  private loudest = 0
  private evenSquares = 0
  private evenSum = 0
  private oddSquares = 0
  private oddSum = 0

  constructor(frames: number) {
    this.peaks = createRunPeaks(frames)
  }

  get squares(): number {
    return this.evenSquares + this.oddSquares
  }

  get sum(): number {
    return this.evenSum + this.oddSum
  }

  get peak(): number {
    return this.peaks[this.loudest] ?? 0
  }

  get runPeaks(): RunPeaks {
    return { peaks: this.peaks, loudest: this.loudest }
  }

  /** Adds frames `from` up to `to`; `from` begins a run of {@link PEAK_RUN}. */
  add(samples: Float32Array, from: number, to: number): void {
    const { peaks } = this
    let { evenSquares, evenSum, oddSquares, oddSum, peak, loudest } = this
    for (let run = 1 + from / PEAK_RUN, start = from; start < to; run++, start += PEAK_RUN) {
      const end = Math.min(start + PEAK_RUN, to)
      const pairsEnd = end - (end % 2)
      let high = 0
      let low = 0
      for (let i = start; i < pairsEnd; i += 2) {
        const x = samples[i] ?? 0
        const odd = samples[i + 1] ?? 0
        evenSquares += x * x
        evenSum += x
        oddSquares += odd * odd
        oddSum += odd
        if (x > high) high = x
        else if (x < low) low = x
        if (odd > high) high = odd
        else if (odd < low) low = odd
      }
      if (pairsEnd < end) {
        const x = samples[pairsEnd] ?? 0
        evenSquares += x * x
        evenSum += x
        high = Math.max(high, x)
        low = Math.min(low, x)
      }
      const runPeak = Math.max(high, -low)
      peaks[run] = runPeak
      if (runPeak > peak) {
        peak = runPeak
        loudest = run
      }
    }
    this.loudest = loudest
    this.evenSquares = evenSquares
    this.evenSum = evenSum
    this.oddSquares = oddSquares
    this.oddSum = oddSum
  }
}
