import { STEP_FRAMES, type Steps } from '../../sound/steps'
import { type PeakFilter, peakFilter, peakOversampling } from './true-peak-filter'

/** Samples looked at together; at least the reach of the filter, so that neighbours bound a run. Even. */
export const PEAK_RUN = 32

/** The largest absolute sample of each run of a channel. */
export interface RunPeaks {
  /** Run 0 of the samples at index 1; the first and the last are silent. */
  readonly peaks: Float32Array
  /** Index of the largest, the first of them. */
  readonly loudest: number
}

/** The array of {@link RunPeaks} for so many frames, all silent yet. */
export function createRunPeaks(frames: number): Float32Array {
  return new Float32Array(Math.ceil(frames / PEAK_RUN) + 2)
}

/**
 * True peak of one channel in steps, linear (1 = full scale): the largest absolute value, between the samples too. The sound
 * is taken to be surrounded by silence. ITU-R BS.1770-5, Annex 2: read at 4 times the sample rate below 88.2 kHz, at
 * twice from there, at the samples alone from 176.4 kHz.
 *
 * Most of a sound is skipped, without changing the result: no point between samples can exceed the largest
 * sample around it by more than the filter's sum of absolute weights.
 * @param floor what is known to be reached: returned if this channel stays below
 */
export function* truePeakSteps(
  samples: Float32Array,
  { peaks, loudest }: RunPeaks,
  sampleRate: number,
  floor: number,
): Steps<number> {
  let peak = Math.max(floor, peaks[loudest] ?? 0)
  const filter = peakFilter(peakOversampling(sampleRate))
  if (filter.phases.length === 0) return peak
  const scratch = new Float64Array(PEAK_RUN + filter.taps - 1)
  // The loudest run first: the higher the peak so far, the more is skipped.
  peak = runPeak(samples, loudest, reachOf(peaks, loudest), filter, scratch, peak)
  for (let from = 0; from < peaks.length; from += STEP_FRAMES / PEAK_RUN) {
    const to = Math.min(peaks.length, from + STEP_FRAMES / PEAK_RUN)
    for (let run = from; run < to; run++) {
      const reach = reachOf(peaks, run)
      if (reach * filter.largestGain > peak) peak = runPeak(samples, run, reach, filter, scratch, peak)
    }
    yield to / peaks.length
  }
  return peak
}

/** Largest absolute sample of a run and its neighbours. */
function reachOf(peaks: Float32Array, run: number): number {
  const before = run > 0 ? (peaks[run - 1] ?? 0) : 0
  const after = run + 1 < peaks.length ? (peaks[run + 1] ?? 0) : 0
  return Math.max(before, peaks[run] ?? 0, after)
}

/**
 * Largest of `floor` and the points between the samples of one run, the gap to the next run included.
 * `reach` is the largest absolute sample of the run and its neighbours.
 */
function runPeak(
  samples: Float32Array,
  run: number,
  reach: number,
  filter: PeakFilter,
  scratch: Float64Array,
  floor: number,
): number {
  const before = filter.taps / 2 - 1
  const first = (run - 1) * PEAK_RUN - before
  for (let i = 0; i < scratch.length; i++) {
    const at = first + i
    // Asked for what lies outside, an array of samples is slow from then on.
    scratch[i] = at >= 0 && at < samples.length ? (samples[at] ?? 0) : 0
  }
  let peak = floor
  for (const { weights, farGain, furtherGain } of filter.phases) {
    const weightEarlier = weights[before - 1] ?? 0
    const weightBefore = weights[before] ?? 0
    const weightAfter = weights[before + 1] ?? 0
    const weightLater = weights[before + 2] ?? 0
    // Two samples, or else four, decide almost always whether the whole dot product could matter.
    const worthwhile = peak - farGain * reach
    const stillWorthwhile = peak - furtherGain * reach
    for (let at = 0; at < PEAK_RUN; at++) {
      const near = weightBefore * (scratch[at + before] ?? 0) + weightAfter * (scratch[at + before + 1] ?? 0)
      if (Math.abs(near) <= worthwhile) continue
      const further =
        weightEarlier * (scratch[at + before - 1] ?? 0) + weightLater * (scratch[at + before + 2] ?? 0)
      if (Math.abs(near + further) <= stillWorthwhile) continue
      let sum = 0
      for (let tap = 0; tap < weights.length; tap++) sum += (weights[tap] ?? 0) * (scratch[at + tap] ?? 0)
      const size = Math.abs(sum)
      if (size > peak) peak = size
    }
  }
  return peak
}
