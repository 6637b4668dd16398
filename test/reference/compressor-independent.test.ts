import { describe, expect, it } from 'vitest'
import { chainOf, excerpt, renderChain, type SettingsByKind, type Sound } from '../../src/core'
import { channel, stageWith, through } from '../setup/chains'
import { compressed } from '../setup/independent-compressor'
import { recordings } from '../setup/recordings'
import { noise, scaled } from '../setup/signals'
import { largestDifference } from '../setup/spectrum'

/** -120 dB re full scale. */
const TOLERANCE = 1e-6

const settings: [string, Partial<SettingsByKind['compressor']>][] = [
  ['peak, hard knee', { thresholdDb: -24, ratio: 4, kneeDb: 0 }],
  ['peak, wide knee, fast', { thresholdDb: -30, ratio: 8, kneeDb: 24, attackMs: 0.1, releaseMs: 20 }],
  ['RMS', { thresholdDb: -30, ratio: 3, kneeDb: 6, detector: 'rms', attackMs: 3, releaseMs: 120 }],
  ['lookahead 5 ms, limiting', { thresholdDb: -20, ratio: Number.POSITIVE_INFINITY, lookaheadMs: 5 }],
  ['side-chain high-pass', { thresholdDb: -36, ratio: 6, sideChainHighPassHz: 180 }],
  ['parallel with makeup', { thresholdDb: -50, ratio: 20, mix: 0.4, makeupDb: 9 }],
  [
    'all together',
    {
      thresholdDb: -40,
      ratio: 2.5,
      kneeDb: 12,
      attackMs: 0.02,
      releaseMs: 5,
      lookaheadMs: 10,
      detector: 'rms',
      sideChainHighPassHz: 500,
      makeupDb: -6,
      mix: 0.75,
    },
  ],
]

/** Noise in bursts of 60 ms at changing levels, a third of it silence. */
function bursts(sampleRate: number, channelCount: number): Sound {
  const levels = [0.5, 0, 0.02, 0.9, 0, 0.1]
  return noise(sampleRate, 1, channelCount, 11, (seconds) => levels[Math.floor(seconds / 0.06) % 6] ?? 0)
}

describe('an independent compressor in 64 bits, written from Giannoulis, Massberg and Reiss (JAES 60(6), 2012)', () => {
  it.each(settings)('%s: the same on noise bursts, mono and stereo, to -120 dB', (_, changes) => {
    for (const sound of [bursts(48_000, 1), bursts(44_100, 2), bursts(8000, 2)]) {
      const stage = stageWith('compressor', changes)
      const own = through(sound, stage).channels
      expect(largestDifference(own, compressed(sound, stage.settings))).toBeLessThan(TOLERANCE)
      // The check would be worth nothing if the compressor had found nothing to do.
      expect(largestDifference(own, sound.channels)).toBeGreaterThan(0.05)
    }
  })

  it.each(settings)('%s: the same on recorded voices, to -120 dB', (_, changes) => {
    const stage = stageWith('compressor', changes)
    for (const { name, sound } of recordings().slice(0, 2)) {
      const half = excerpt(sound, 0, 48_000)
      const own = through(half, stage).channels
      expect(largestDifference(own, compressed(half, stage.settings)), name).toBeLessThan(TOLERANCE)
    }
  })

  it('one gain for both channels: the ratio of left to right is kept', () => {
    const [left = new Float32Array(0)] = bursts(48_000, 1).channels
    const sound = { sampleRate: 48_000, channels: [left, left.map((x) => x / 4)] }
    const output = through(sound, stageWith('compressor', { thresholdDb: -40, ratio: 10 }))
    expect(channel(output, 1)).toEqual(channel(output, 0).map((x) => x / 4))
  })
})

describe('below the threshold', () => {
  it('every bit passes with mix 1 and makeup 0, whatever the detector, ratio, knee and lookahead', () => {
    for (const changes of [
      { thresholdDb: -6, kneeDb: 0, ratio: Number.POSITIVE_INFINITY },
      { thresholdDb: 0, kneeDb: 12, ratio: 4, lookaheadMs: 7 },
      { thresholdDb: -6, kneeDb: 0, detector: 'rms' as const, attackMs: 0.02 },
    ]) {
      const sound = scaled(bursts(44_100, 2), 0.5)
      const { sound: output, traces } = renderChain(sound, chainOf([stageWith('compressor', changes)]))
      expect(output.channels).toEqual(sound.channels)
      expect(traces.get('compressor')?.gainDb.every((gain) => gain === 0)).toBe(true)
    }
  })

  it('every bit passes again after a loud passage, once the release has run out', () => {
    const sound = noise(48_000, 3, 1, 5, (seconds) => (seconds < 0.2 ? 0.9 : 0.05))
    const output = through(sound, stageWith('compressor', { thresholdDb: -20, releaseMs: 50 }))
    expect(channel(output).subarray(100_000)).toEqual(channel(sound).subarray(100_000))
  })
})
