import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { integratedLoudness, loudnessOverTime, type Measures, measure } from '../../../src/core/measure'
import { frameCount, type Sound } from '../../../src/core/sound/sound'
import { joined, noise, repeated, scaled, steppedSine } from '../../setup/signals'
import { within } from './loudness-oracle'

/** Gains and samples are rounded to 32 bits, so levels agree to about 1e-6 dB. */
const ROUNDING_DB = 1e-5

const LEVELS = [
  'integratedLufs',
  'momentaryMaxLufs',
  'shortTermMaxLufs',
  'truePeakDbtp',
  'samplePeakDbfs',
  'rmsDbfs',
  'noiseFloorDbfs',
] as const
const DIFFERENCES = ['loudnessRangeLu', 'crestFactorDb', 'peakToLoudnessLu'] as const
const LOUDNESS = ['integratedLufs', 'momentaryMaxLufs', 'shortTermMaxLufs'] as const

const rates = fc.constantFrom(8000, 11_025, 16_000, 22_050, 44_100, 48_000)

/** Noise of 3.5 to 5 s whose level wanders by some 20 dB, in 1 to 5 channels. */
const takes = fc
  .record({
    sampleRate: rates,
    seconds: fc.double({ min: 3.5, max: 5, noNaN: true }),
    channels: fc.integer({ min: 1, max: 5 }),
    seed: fc.nat(),
  })
  .map(({ sampleRate, seconds, channels, seed }) =>
    noise(sampleRate, seconds, channels, seed, (t) => 0.3 * (0.1 + Math.sin(t + (seed % 7)) ** 2)),
  )

/** Any finite samples, subnormal and enormous ones among them. */
const wild: fc.Arbitrary<Sound> = fc.record({
  sampleRate: rates,
  channels: fc.integer({ min: 0, max: 5 }).chain((count) =>
    fc.nat({ max: 9000 }).chain((frames) =>
      fc.array(
        fc
          .float32Array({ noNaN: true, noDefaultInfinity: true, minLength: 1, maxLength: 50 })
          .map((pattern) =>
            Float32Array.from({ length: frames }, (_, i) => pattern[i % pattern.length] ?? 0),
          ),
        { minLength: count, maxLength: count },
      ),
    ),
  ),
})

const numbersOf = (measures: Measures) => [...LEVELS, ...DIFFERENCES].map((name) => measures[name])

describe('measure', () => {
  it('a gain of g dB shifts every level by g and no difference of levels', () => {
    fc.assert(
      fc.property(takes, fc.double({ min: -20, max: 20, noNaN: true }), (sound, gainDb) => {
        const before = measure(sound)
        const after = measure(scaled(sound, 10 ** (gainDb / 20)))
        for (const name of LEVELS) within(after[name], (before[name] ?? Number.NaN) + gainDb, ROUNDING_DB)
        for (const name of DIFFERENCES) within(after[name], before[name] ?? Number.NaN, ROUNDING_DB)
      }),
      { numRuns: 20 },
    )
  })

  it('a second channel like the first adds 3.01 LU and changes no level', () => {
    fc.assert(
      fc.property(takes, ({ sampleRate, channels: [first = new Float32Array()] }) => {
        const one = measure({ sampleRate, channels: [first] })
        const two = measure({ sampleRate, channels: [first, first] })
        for (const name of LOUDNESS)
          within(two[name], (one[name] ?? Number.NaN) + 10 * Math.log10(2), ROUNDING_DB)
        for (const name of ['truePeakDbtp', 'samplePeakDbfs', 'rmsDbfs'] as const) {
          within(two[name], one[name] ?? Number.NaN, ROUNDING_DB)
        }
      }),
      { numRuns: 20 },
    )
  })

  it('upside down it measures the same; backwards it has the same peaks and levels', () => {
    fc.assert(
      fc.property(takes, (sound) => {
        const { dcOffset, ...upright } = measure(sound)
        const { dcOffset: mirrored, ...upsideDown } = measure(scaled(sound, -1))
        expect(upsideDown).toEqual(upright)
        expect(mirrored).toEqual(dcOffset.map((mean) => -mean))
        const backwards = measure({
          ...sound,
          channels: sound.channels.map((samples) => samples.toReversed()),
        })
        within(backwards.truePeakDbtp, upright.truePeakDbtp ?? Number.NaN, 1e-9)
        within(backwards.rmsDbfs, upright.rmsDbfs ?? Number.NaN, 1e-9)
      }),
      { numRuns: 20 },
    )
  })

  it('a steady tone measures the same played several times in a row', () => {
    fc.assert(
      fc.property(
        rates,
        fc.integer({ min: 4, max: 12 }),
        fc.integer({ min: 2, max: 4 }),
        fc.double({ min: -40, max: 0, noNaN: true }),
        (sampleRate, quarters, times, level) => {
          // Whole seconds and a whole number of periods, so that nothing jumps at the seam.
          const tone = { sampleRate, channels: [steppedSine(sampleRate, [[quarters, level]], 400)] }
          const [once, again] = [measure(tone), measure(repeated(tone, times))]
          for (const name of ['integratedLufs', 'momentaryMaxLufs', 'truePeakDbtp', 'rmsDbfs'] as const) {
            within(again[name], once[name] ?? Number.NaN, 0.02)
          }
          within(again.loudnessRangeLu, 0, 0.02)
        },
      ),
      { numRuns: 20 },
    )
  })

  it('digital silence and no sound at all are not measurable, at any length', () => {
    fc.assert(
      fc.property(
        rates,
        fc.nat({ max: 100_000 }),
        fc.integer({ min: 0, max: 5 }),
        (sampleRate, frames, count) => {
          const channels = Array.from({ length: count }, () => new Float32Array(frames))
          const measures = measure({ sampleRate, channels })
          expect(numbersOf(measures).every((value) => value === null)).toBe(true)
          expect(measures.dcOffset).toEqual(channels.map(() => 0))
          expect(measures.clippedSamples).toBe(0)
          expect(integratedLoudness({ sampleRate, channels })).toBeNull()
        },
      ),
      { numRuns: 30 },
    )
  })

  it('any finite sound gives finite numbers or null', () => {
    fc.assert(
      fc.property(wild, (sound) => {
        const measures = measure(sound)
        for (const value of numbersOf(measures)) expect(value === null || Number.isFinite(value)).toBe(true)
        for (const value of [...measures.dcOffset, measures.clippedSamples, measures.durationSeconds]) {
          expect(Number.isFinite(value)).toBe(true)
        }
        const { shortTermLufs, momentaryLufs } = loudnessOverTime(sound)
        for (const value of [...shortTermLufs, ...momentaryLufs])
          expect(Math.abs(value)).not.toBe(Number.POSITIVE_INFINITY)
      }),
    )
  })

  it('leaves its input as it was, and reads a part of a larger array as that part', () => {
    fc.assert(
      fc.property(takes, (sound) => {
        const copy = sound.channels.map((samples) => samples.slice())
        const around = sound.channels.map((samples) =>
          joined([Float32Array.of(1, 1, 1), samples, Float32Array.of(-1, -1)]).subarray(
            3,
            3 + frameCount(sound),
          ),
        )
        expect(measure({ ...sound, channels: around })).toEqual(measure(sound))
        expect(sound.channels).toEqual(copy)
      }),
      { numRuns: 10 },
    )
  })

  it('true peak is never below sample peak, nor integrated loudness above the loudest 400 ms', () => {
    fc.assert(
      fc.property(takes, (sound) => {
        const measures = measure(sound)
        expect(measures.truePeakDbtp).toBeGreaterThanOrEqual(measures.samplePeakDbfs ?? Number.NaN)
        expect(measures.integratedLufs).toBeLessThanOrEqual(measures.momentaryMaxLufs ?? Number.NaN)
        expect(measures.integratedLufs).toBe(integratedLoudness(sound))
      }),
      { numRuns: 10 },
    )
  })
})
