import type { Sound } from '../sound'
import { type PeakFilter, peakFilter, peakOversampling } from './true-peak-filter'

/** Samples looked at together; at least the reach of the filter, so that neighbours bound a run. */
const RUN = 32

/**
 * True peak of a sound, linear (1 = full scale): the largest absolute value of any channel, between the
 * samples too. The sound is taken to be surrounded by silence. ITU-R BS.1770-5, Annex 2: read at 4 times the
 * sample rate below 88.2 kHz, at twice from there, at the samples alone from 176.4 kHz.
 *
 * Most of a sound is skipped, without changing the result: no point between samples can exceed the largest
 * sample around it by more than the filter's sum of absolute weights.
 */
export function truePeak(sound: Sound): number {
  const filter = peakFilter(peakOversampling(sound.sampleRate))
  return sound.channels.reduce((peak, samples) => channelPeak(samples, filter, peak), 0)
}

function channelPeak(samples: Float32Array, filter: PeakFilter, floor: number): number {
  const runPeaks = largestOfEachRun(samples)
  const samplePeak = runPeaks.reduce((most, value) => Math.max(most, value), 0)
  let peak = Math.max(floor, samplePeak)
  if (filter.phases.length === 0) return peak
  const scratch = new Float64Array(RUN + filter.taps - 1)
  const read = (run: number) => {
    const reach = Math.max(runPeaks[run - 1] ?? 0, runPeaks[run] ?? 0, runPeaks[run + 1] ?? 0)
    if (reach * filter.largestGain > peak) peak = runPeak(samples, run, reach, filter, scratch, peak)
  }
  // The loudest run first: the higher the peak so far, the more is skipped.
  read(runPeaks.indexOf(samplePeak))
  for (let run = 0; run < runPeaks.length; run++) read(run)
  return peak
}

/** Largest absolute sample of each run; one run before the first and one after the last reach into silence. */
function largestOfEachRun(samples: Float32Array): Float64Array {
  const peaks = new Float64Array(Math.ceil(samples.length / RUN) + 2)
  for (let run = 1; run < peaks.length - 1; run++) {
    const end = Math.min(samples.length, run * RUN)
    let most = 0
    for (let i = (run - 1) * RUN; i < end; i++) {
      const size = Math.abs(samples[i] ?? 0)
      if (size > most) most = size
    }
    peaks[run] = most
  }
  return peaks
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
  const first = (run - 1) * RUN - before
  for (let i = 0; i < scratch.length; i++) scratch[i] = samples[first + i] ?? 0
  let peak = floor
  for (const { weights, farGain } of filter.phases) {
    const weightBefore = weights[before] ?? 0
    const weightAfter = weights[before + 1] ?? 0
    // Two samples decide almost always whether the whole dot product could matter.
    const worthwhile = peak - farGain * reach
    for (let at = 0; at < RUN; at++) {
      const near = weightBefore * (scratch[at + before] ?? 0) + weightAfter * (scratch[at + before + 1] ?? 0)
      if (Math.abs(near) <= worthwhile) continue
      let sum = 0
      for (let tap = 0; tap < weights.length; tap++) sum += (weights[tap] ?? 0) * (scratch[at + tap] ?? 0)
      const size = Math.abs(sum)
      if (size > peak) peak = size
    }
  }
  return peak
}
