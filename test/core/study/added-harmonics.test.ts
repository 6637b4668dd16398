import { describe, expect, it } from 'vitest'
import { addedHarmonics, integratedLoudness, sineAsLoudDbfs } from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { harmonicAmplitudes } from '../../setup/fourier-series'
import { inChannels, steppedSine } from '../../setup/signals'

const db = (ratio: number) => 20 * Math.log10(ratio)

describe('harmonics that a stage adds to a sine', () => {
  it.each([8000, 44_100, 48_000, 192_000])(
    'at low drive at %d Hz the third is that of x - x^3 / 3, no second',
    (sampleRate) => {
      // tanh(x) = x - x^3/3 + ..., and sin^3 t = (3 sin t - sin 3t) / 4 (Chebyshev's T3): a sine of peak d has a third
      // harmonic of (d^3/12) / (d - d^3/4). The term of x^5 changes that by less than 0.05 dB at d = 0.1.
      const d = 0.1
      const { levelsDb } = addedHarmonics(stageWith('saturator', { driveDb: 0 }), db(d), sampleRate)
      const [second = 0, third = 0] = levelsDb
      expect(Math.abs(third - db(d ** 2 / 12 / (1 - d ** 2 / 4)))).toBeLessThan(0.05)
      expect(second).toBeLessThan(-100)
    },
  )

  it('with drive and bias are those of the Fourier series of the curve', () => {
    const [drive, bias, peak] = [4, 0.4, 0.5]
    const curve = (x: number) => Math.tanh(drive * x + bias)
    const [, first = 1, ...others] = harmonicAmplitudes(curve, peak, 9)
    const stage = stageWith('saturator', { driveDb: db(drive), bias })
    const { levelsDb, frequencyHz } = addedHarmonics({ ...stage, on: false }, db(peak), 48_000)
    expect(Math.abs(frequencyHz - 220)).toBeLessThan(3)
    expect(levelsDb).toHaveLength(8)
    levelsDb.forEach((level, k) => {
      expect(Math.abs(level - db((others[k] ?? 0) / first)), `H${k + 2}`).toBeLessThan(0.1)
    })
  })

  it('of a stage that bends nothing are none', () => {
    const { levelsDb } = addedHarmonics(stageWith('gain', { gainDb: -6 }), -12, 48_000)
    expect(Math.max(...levelsDb)).toBeLessThan(-100)
  })
})

describe('a sine as loud as a take', () => {
  it.each([1, 2])('measures that loudness, in %d channels', (channelCount) => {
    const lufs = -19.4
    const samples = steppedSine(48_000, [[5, sineAsLoudDbfs(lufs, channelCount)]], 997)
    expect(
      Math.abs((integratedLoudness(inChannels(48_000, samples, channelCount)) ?? 0) - lufs),
    ).toBeLessThan(0.02)
  })
})

it('a sine of silence has no harmonics', () => {
  const { levelsDb } = addedHarmonics(stageWith('saturator', {}), Number.NEGATIVE_INFINITY, 48_000)
  expect(Math.max(...levelsDb)).toBe(-120)
})
