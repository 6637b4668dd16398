import { gainToDb, powerToDb } from '../dsp/decibels'
import { truePeak } from '../dsp/true-peak'
import { durationSeconds, type Sound } from '../sound'
import { channelLevels } from './levels'
import { type Loudness, loudness } from './loudness'
import { noiseFloorDbfs } from './noise-floor'

/** What a sound measures. Null means not measurable: the sound is silent or too short for that measure. */
export interface Measures extends Loudness {
  /** Largest peak of any channel between the samples, dB re full scale (ITU-R BS.1770-5, Annex 2). */
  readonly truePeakDbtp: number | null
  readonly samplePeakDbfs: number | null
  /** Root mean square over all channels; 0 dBFS is a full-scale square wave, a full-scale sine reads -3.01. */
  readonly rmsDbfs: number | null
  /** Sample peak less root mean square. */
  readonly crestFactorDb: number | null
  /** True peak less integrated loudness. */
  readonly peakToLoudnessLu: number | null
  readonly noiseFloorDbfs: number | null
  /** Samples in runs of three or more equal ones at full scale, all channels added. */
  readonly clippedSamples: number
  /** Mean of each channel, full scale = 1. */
  readonly dcOffset: readonly number[]
  readonly durationSeconds: number
}

/**
 * Loudness, peaks and levels of a whole sound. Changes nothing in it.
 *
 * @param sound 1 to 5 channels (L R C Ls Rs), 8 to 192 kHz, finite samples
 * @throws MeasureError `sample-rate` or `channels` outside those ranges
 */
export function measure(sound: Sound): Measures {
  const loud = loudness(sound)
  const levels = sound.channels.map(channelLevels)
  const peak = Math.max(0, ...levels.map((level) => level.peak))
  const meanSquare = levels.reduce((sum, level) => sum + level.meanSquare / levels.length, 0)
  const samplePeakDbfs = peak > 0 ? gainToDb(peak) : null
  const rmsDbfs = meanSquare > 0 ? powerToDb(meanSquare) : null
  const truePeakDbtp = peak > 0 ? gainToDb(truePeak(sound)) : null
  return {
    ...loud,
    truePeakDbtp,
    samplePeakDbfs,
    rmsDbfs,
    crestFactorDb: difference(samplePeakDbfs, rmsDbfs),
    peakToLoudnessLu: difference(truePeakDbtp, loud.integratedLufs),
    noiseFloorDbfs: noiseFloorDbfs(sound),
    clippedSamples: levels.reduce((sum, level) => sum + level.clippedSamples, 0),
    dcOffset: levels.map((level) => level.mean),
    durationSeconds: durationSeconds(sound),
  }
}

function difference(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : a - b
}
