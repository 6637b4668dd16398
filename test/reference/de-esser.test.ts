import { describe, expect, it } from 'vitest'
import { chainOf, renderChain, type SettingsByKind, type Sound } from '../../src/core'
import { channel, stageWith, through } from '../setup/chains'
import {
  butterworthHighPass,
  butterworthLowPass,
  linkedLevels,
  reductionsDb,
} from '../setup/independent-compressor'
import { noise } from '../setup/signals'
import { largestDifference, rmsDb } from '../setup/spectrum'

type Settings = SettingsByKind['de-esser']

/**
 * A de-esser in 64 bits from its parts: the crossover of S. Linkwitz (JAES 24(1), 1976), the gain computer and
 * detector of Giannoulis, Massberg and Reiss (JAES 60(6), 2012), low half plus upper half turned down.
 */
function deEssed({ sampleRate, channels }: Sound, settings: Settings): Float64Array[] {
  const { crossoverHz } = settings
  const twice = (filter: typeof butterworthHighPass, samples: Float64Array) =>
    filter(filter(samples, crossoverHz, sampleRate), crossoverHz, sampleRate)
  const inputs = channels.map((samples) => Float64Array.from(samples))
  const uppers = inputs.map((samples) => twice(butterworthHighPass, samples))
  const levels = linkedLevels(uppers, inputs[0]?.length ?? 0)
  const reductions = reductionsDb(levels, settings, sampleRate, settings.rangeDb)
  return inputs.map((samples, c) => {
    const lower = twice(butterworthLowPass, samples)
    return samples.map((x, n) => {
      const gain = 10 ** (-(reductions[n] ?? Number.NaN) / 20)
      return settings.band === 'all' ? gain * x : (lower[n] ?? 0) + gain * (uppers[c]?.[n] ?? 0)
    })
  })
}

const RATE = 48_000

/** Harmonics of 220 Hz that fall off upwards, with nothing to speak of above 3 kHz: a sung vowel. */
function vowelAt(frame: number): number {
  let sum = 0
  for (let k = 1; k <= 12; k++) sum += Math.sin((2 * Math.PI * 220 * k * frame) / RATE) / k ** 1.5
  return 0.15 * sum
}

/** Vowel, 150 ms of hiss between 5 and 10 kHz, vowel; the hiss fades in and out over 10 ms. */
function vowelHissVowel(): { sound: Sound; hiss: [number, number] } {
  const from = 24_000
  const to = from + 7200
  const white = Float64Array.from(channel(noise(RATE, 1.5, 1, 3, () => 0.5)))
  const band = butterworthLowPass(butterworthHighPass(white, 5000, RATE), 10_000, RATE)
  const samples = Float32Array.from(band, (hissing, n) => {
    const inside = Math.min(1, Math.max(0, Math.min(n - from, to - n) / 480))
    return (1 - inside) * vowelAt(n) + inside * hissing
  })
  return { sound: { sampleRate: RATE, channels: [samples] }, hiss: [from, to] }
}

describe('de-esser', () => {
  const settings: [string, Partial<Settings>][] = [
    ['its defaults', { thresholdDb: -40 }],
    ['a wide knee and slow times', { thresholdDb: -30, kneeDb: 20, attackMs: 10, releaseMs: 200, ratio: 3 }],
    ['everything turned down', { thresholdDb: -36, band: 'all', crossoverHz: 2500 }],
    ['no bound but the ratio', { thresholdDb: -50, ratio: Number.POSITIVE_INFINITY, rangeDb: 60 }],
  ]
  it.each(settings)('with %s is the same as an independent one in 64 bits, to -120 dB', (_, changes) => {
    const levels = [0.3, 0, 0.02, 0.8]
    for (const channelCount of [1, 2]) {
      const sound = noise(
        44_100,
        0.8,
        channelCount,
        9,
        (seconds) => levels[Math.floor(seconds / 0.05) % 4] ?? 0,
      )
      const stage = stageWith('de-esser', changes)
      const own = through(sound, stage).channels
      expect(largestDifference(own, deEssed(sound, stage.settings))).toBeLessThan(1e-6)
      expect(largestDifference(own, sound.channels)).toBeGreaterThan(0.05)
    }
  })

  it.each(['above', 'all'] as const)(
    'turning down %s, it holds an S between two vowels and leaves the vowels',
    (band) => {
      const { sound, hiss } = vowelHissVowel()
      const stage = stageWith('de-esser', { thresholdDb: -36, band })
      const { sound: output, traces } = renderChain(sound, chainOf([stage]))
      const change = (from: number, to: number) =>
        rmsDb(channel(output), from, to) - rmsDb(channel(sound), from, to)
      const [from, to] = hiss
      expect(change(from + 960, to - 960)).toBeLessThan(-6)
      expect(change(from + 960, to - 960)).toBeGreaterThan(-stage.settings.rangeDb)
      expect(Math.abs(change(4800, from))).toBeLessThan(0.1)
      // Five release times behind the S.
      expect(Math.abs(change(to + 4800, 72_000))).toBeLessThan(0.1)
      // The trace says where: nothing before the S, the range at most.
      const trace = traces.get('de-esser')
      expect(trace?.gainDb.subarray(10, Math.floor(from / 128)).every((gain) => gain > -0.01)).toBe(true)
      expect(Math.min(...(trace?.gainDb ?? []))).toBeGreaterThanOrEqual(-stage.settings.rangeDb)
      expect(Math.min(...(trace?.gainDb ?? []))).toBeLessThan(-8)
    },
  )

  it('never takes away more than its range', () => {
    const loud = noise(RATE, 0.3, 1, 4, () => 1)
    for (const rangeDb of [0, 3, 12]) {
      const stage = stageWith('de-esser', { thresholdDb: -80, ratio: Number.POSITIVE_INFINITY, rangeDb })
      const trace = renderChain(loud, chainOf([stage])).traces.get('de-esser')
      // The gains of a trace are 32-bit numbers.
      expect(Math.min(...(trace?.gainDb ?? []))).toBeCloseTo(-rangeDb, 4)
    }
    const whole = stageWith('de-esser', { thresholdDb: -80, rangeDb: 0, band: 'all' })
    expect(through(loud, whole).channels).toEqual(loud.channels)
  })
})
