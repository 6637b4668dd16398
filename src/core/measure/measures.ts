import { gainToDb, powerToDb } from '../sound/decibels'
import { durationSeconds, type Sound } from '../sound/sound'
import { finished } from '../sound/steps'
import { type ChannelLevels, channelLevels } from './levels/levels'
import { noiseFloorDbfs, type Pauses } from './levels/noise-floor'
import { subBlockEnergySteps } from './loudness/block-energies'
import { type Loudness, loudness } from './loudness/loudness'
import { truePeak } from './peaks/true-peak'
import type { SibilantEvent } from './sibilance/sibilance'
import { sibilanceDb } from './sibilance/sibilance-level'

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
  /** In the pauses of the take it was made from (see `noiseFloorDbfs`). */
  readonly noiseFloorDbfs: number | null
  /** Of the sibilants it was given, against the vowels next to them (see `sibilanceDb`); null without any. */
  readonly sibilanceDb: number | null
  /** Samples in runs of three or more equal ones at full scale, all channels added. */
  readonly clippedSamples: number
  /** Mean of each channel, full scale = 1. */
  readonly dcOffset: readonly number[]
  readonly durationSeconds: number
}

/** What is known already of a sound that is to be measured. */
export interface MeasureKnown {
  /** K-weighted energies of its sub-blocks. */
  readonly energies?: Float64Array
  /** Pauses of the take that it was made from, in which its noise floor is measured; its own if not given. */
  readonly pauses?: Pauses | null
  /** Sibilants of the take that it was made from; none are looked for if not given. */
  readonly sibilants?: readonly SibilantEvent[]
}

/**
 * Loudness, peaks and levels of a whole sound. Changes nothing in it.
 *
 * @param sound 1 to 5 channels (L R C Ls Rs), 8 to 192 kHz, finite samples
 * @throws MeasureError `sample-rate` or `channels` outside those ranges
 */
export function measure(sound: Sound, known: MeasureKnown = {}): Measures {
  return finished(measureSteps(sound, known))
}

/** {@link measure} in steps, none longer than one look at one channel: yields the share done, roughly. */
export function* measureSteps(
  sound: Sound,
  { energies: known, pauses, sibilants = [] }: MeasureKnown = {},
): Generator<number, Measures, void> {
  const energies = known ?? (yield* subBlockEnergySteps(sound))
  const loud = loudness(sound, energies)
  const { channels, sampleRate } = sound
  const levels: ChannelLevels[] = []
  let truest = 0
  for (const samples of channels) {
    yield levels.length / channels.length
    const found = channelLevels(samples)
    levels.push(found)
    yield (levels.length - 0.5) / channels.length
    truest = truePeak(samples, found.runPeaks, sampleRate, truest)
  }
  yield 1
  const peak = Math.max(0, ...levels.map((level) => level.peak))
  const meanSquare = levels.reduce((sum, level) => sum + level.meanSquare / levels.length, 0)
  const samplePeakDbfs = peak > 0 ? gainToDb(peak) : null
  const rmsDbfs = meanSquare > 0 ? powerToDb(meanSquare) : null
  const truePeakDbtp = peak > 0 ? gainToDb(truest) : null
  return {
    ...loud,
    truePeakDbtp,
    samplePeakDbfs,
    rmsDbfs,
    crestFactorDb: difference(samplePeakDbfs, rmsDbfs),
    peakToLoudnessLu: difference(truePeakDbtp, loud.integratedLufs),
    noiseFloorDbfs: noiseFloorDbfs(sound, pauses),
    sibilanceDb: sibilanceDb(sound, sibilants),
    clippedSamples: levels.reduce((sum, level) => sum + level.clippedSamples, 0),
    dcOffset: levels.map((level) => level.mean),
    durationSeconds: durationSeconds(sound),
  }
}

function difference(a: number | null, b: number | null): number | null {
  return a === null || b === null ? null : a - b
}
