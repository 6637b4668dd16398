import { gainToDb, powerToDb } from '../../sound/decibels'
import type { Sound } from '../../sound/sound'
import { finished, partOf, type Steps } from '../../sound/steps'
import { truePeakSteps } from '../peaks/true-peak'
import { channelLevelSteps } from './channel-levels'

/** Peaks and levels of a sound. Null means not measurable: the sound is silent. */
export interface Levels {
  /** Largest peak of any channel between the samples, dB re full scale (ITU-R BS.1770-5, Annex 2). */
  readonly truePeakDbtp: number | null
  readonly samplePeakDbfs: number | null
  /** Root mean square over all channels; 0 dBFS is a full-scale square wave, a full-scale sine reads -3.01. */
  readonly rmsDbfs: number | null
  /** Sample peak less root mean square. */
  readonly crestFactorDb: number | null
  /** Samples in runs of three or more equal ones at full scale, all channels added. */
  readonly clippedSamples: number
  /** Mean of each channel, full scale = 1. */
  readonly dcOffset: readonly number[]
}

/** {@link Levels} of a whole sound with finite samples. */
export function levels(sound: Sound): Levels {
  return finished(levelSteps(sound))
}

/** {@link levels} in steps. */
export function* levelSteps({ channels, sampleRate }: Sound): Steps<Levels> {
  const dcOffset: number[] = []
  let [peak, meanSquare, clippedSamples, truest] = [0, 0, 0, 0]
  for (const [c, samples] of channels.entries()) {
    const from = c / channels.length
    const to = (c + 1) / channels.length
    const middle = (from + to) / 2
    const found = yield* partOf(channelLevelSteps(samples), from, middle)
    truest = yield* partOf(truePeakSteps(samples, found.runPeaks, sampleRate, truest), middle, to)
    peak = Math.max(peak, found.peak)
    meanSquare += found.meanSquare / channels.length
    clippedSamples += found.clippedSamples
    dcOffset.push(found.mean)
  }
  const samplePeakDbfs = peak > 0 ? gainToDb(peak) : null
  const rmsDbfs = meanSquare > 0 ? powerToDb(meanSquare) : null
  return {
    truePeakDbtp: peak > 0 ? gainToDb(truest) : null,
    samplePeakDbfs,
    rmsDbfs,
    crestFactorDb: samplePeakDbfs === null || rmsDbfs === null ? null : samplePeakDbfs - rmsDbfs,
    clippedSamples,
    dcOffset,
  }
}
