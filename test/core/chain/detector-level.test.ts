import { describe, expect, it } from 'vitest'
import {
  type DetectorLevel,
  detectorLevelSteps,
  finished,
  gainToDb,
  levelHopFrames,
  SILENT_DBFS,
  type Sound,
  type StageDoc,
} from '../../../src/core'
import { monoOf, stageWith } from '../../setup/chains'
import { noise } from '../../setup/signals'

const RATE = 48_000
/** 32-bit samples of a sine do not always fall on its peak. */
const TOLERANCE_DB = 0.02

function levelOf(sound: Sound, stage: StageDoc): DetectorLevel {
  const level = finished(detectorLevelSteps(sound, stage))
  if (!level) throw new Error('the stage has no detector')
  return level
}

/** One second of sine at -20 dBFS peak. */
const sine = (frequencyHz: number, sampleRate = RATE) =>
  monoOf(sampleRate, sampleRate, (n) => 0.1 * Math.sin((2 * Math.PI * frequencyHz * n) / sampleRate))

/** Once filters and windows have settled. */
const settled = ({ levelDbfs }: DetectorLevel) => levelDbfs[150] ?? Number.NaN

describe('the level that a detector sees', () => {
  it.each([
    ['peak: the peak of a sine', stageWith('compressor', {}), 997, -20],
    // Root mean square of a sine: 3.01 dB below its peak. Ten whole periods in the window of 10 ms.
    ['RMS: 3.01 dB less', stageWith('compressor', { detector: 'rms' }), 1000, -23.01],
    // A second-order Butterworth high-pass is 3.01 dB down at its corner, by definition.
    ['behind its side-chain high-pass', stageWith('compressor', { sideChainHighPassHz: 200 }), 200, -23.01],
    // Linkwitz-Riley, fourth order: 6.02 dB down at the crossover, by definition (two Butterworths in series).
    ['above a crossover: 6.02 dB less at it', stageWith('de-esser', { crossoverHz: 4000 }), 4000, -26.02],
    ['far above it: all of the sine', stageWith('de-esser', { crossoverHz: 1000 }), 10_007, -20],
  ])('%s', (_, stage, frequencyHz, expectedDbfs) => {
    expect(Math.abs(settled(levelOf(sine(frequencyHz), stage)) - expectedDbfs)).toBeLessThan(TOLERANCE_DB)
  })

  it('is the highest of each hop, over all channels, counted from the first frame', () => {
    const sound = noise(RATE, 0.3, 2, 5, (at) => 0.2 + at)
    const { hopFrames, levelDbfs } = levelOf(sound, stageWith('compressor', {}))
    expect(hopFrames).toBe(240)
    const frames = 0.3 * RATE
    const direct = Array.from({ length: Math.ceil(frames / hopFrames) }, (_, hop) => {
      const hops = sound.channels.flatMap((samples) => [
        ...samples.subarray(hop * hopFrames, (hop + 1) * hopFrames),
      ])
      return Math.fround(gainToDb(Math.max(...hops.map(Math.abs))))
    })
    expect([...levelDbfs]).toEqual(direct)
  })

  it('is the same whatever is set beside the detector, on or off, and where the sound is read ahead', () => {
    const sound = noise(RATE, 0.2, 1, 6, () => 0.3)
    const usual = levelOf(sound, stageWith('compressor', { detector: 'rms', sideChainHighPassHz: 120 }))
    const others = { thresholdDb: -60, ratio: 20, kneeDb: 0, lookaheadMs: 5, makeupDb: 12, mix: 0.5 }
    const stage = stageWith('compressor', { detector: 'rms', sideChainHighPassHz: 120, ...others })
    expect(levelOf(sound, { ...stage, on: false })).toEqual(usual)
  })

  it('of silence is the lowest there is', () => {
    const { levelDbfs } = levelOf(
      monoOf(RATE, 4800, () => 0),
      stageWith('de-esser', {}),
    )
    expect([...levelDbfs]).toEqual(Array(20).fill(SILENT_DBFS))
  })

  it('leaves the sound alone', () => {
    const sound = noise(RATE, 0.1, 1, 7, () => 0.3)
    const before = sound.channels.map((samples) => samples.slice())
    levelOf(sound, stageWith('de-esser', {}))
    levelOf(sound, stageWith('compressor', { sideChainHighPassHz: 300 }))
    expect(sound.channels).toEqual(before)
  })

  it('is none of stages without a detector', () => {
    expect(finished(detectorLevelSteps(sine(1000), stageWith('gain', {})))).toBeNull()
  })

  it.each([8000, 44_100, 48_000, 96_000, 192_000])('of 20 minutes at %d Hz takes less than 1 MB', (rate) => {
    expect(Math.ceil((20 * 60 * rate) / levelHopFrames(rate)) * 4).toBeLessThan(1e6)
  })
})
