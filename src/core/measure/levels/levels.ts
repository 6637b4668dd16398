import { createRunPeaks, PEAK_RUN } from '../peaks/true-peak'

/** Plain facts of one channel, all linear (full scale = 1). */
export interface ChannelLevels {
  readonly peak: number
  readonly meanSquare: number
  readonly mean: number
  readonly clippedSamples: number
  /** Largest absolute sample of each run, as `truePeak` wants them. */
  readonly runPeaks: Float32Array
}

/** Just below the largest positive value of 16-bit sound, 1 - 2^-15, so that both its rails count. */
const RAIL = 1 - 2 ** -14
/** A peak may touch the rail by itself; a wave that was cut off stays there. */
const SHORTEST_CLIPPED_RUN = 3

/**
 * Peak, mean square, mean and clipped samples of one channel; all 0 when it is empty.
 *
 * A sample is clipped when it belongs to a run of at least three samples of the same value at or beyond full
 * scale (to within one step of 15-bit sound). Samples of a float file that go beyond full scale and move on
 * are not clipped: turned down they are whole.
 */
export function channelLevels(samples: Float32Array): ChannelLevels {
  const runPeaks = createRunPeaks(samples.length)
  // Even and odd samples are added up apart: two sums that do not wait for each other.
  let [peak, squares, sum, oddSquares, oddSum] = [0, 0, 0, 0, 0]
  for (let run = 1, start = 0; start < samples.length; run++, start += PEAK_RUN) {
    const end = Math.min(start + PEAK_RUN, samples.length)
    const pairsEnd = end - (end % 2)
    let high = 0
    let low = 0
    for (let i = start; i < pairsEnd; i += 2) {
      const x = samples[i] ?? 0
      const odd = samples[i + 1] ?? 0
      squares += x * x
      sum += x
      oddSquares += odd * odd
      oddSum += odd
      if (x > high) high = x
      else if (x < low) low = x
      if (odd > high) high = odd
      else if (odd < low) low = odd
    }
    if (pairsEnd < end) {
      const x = samples[pairsEnd] ?? 0
      squares += x * x
      sum += x
      high = Math.max(high, x)
      low = Math.min(low, x)
    }
    const runPeak = Math.max(high, -low)
    runPeaks[run] = runPeak
    if (runPeak > peak) peak = runPeak
  }
  const count = Math.max(1, samples.length)
  return {
    peak,
    meanSquare: (squares + oddSquares) / count,
    mean: (sum + oddSum) / count,
    clippedSamples: peak < RAIL ? 0 : clippedIn(samples),
    runPeaks,
  }
}

function clippedIn(samples: Float32Array): number {
  let [clipped, previous, run] = [0, 0, 0]
  for (let i = 0; i < samples.length; i++) {
    const x = samples[i] ?? 0
    if (x < RAIL && x > -RAIL) {
      run = 0
      continue
    }
    run = run > 0 && x === previous ? run + 1 : 1
    previous = x
    if (run === SHORTEST_CLIPPED_RUN) clipped += SHORTEST_CLIPPED_RUN
    else if (run > SHORTEST_CLIPPED_RUN) clipped++
  }
  return clipped
}
