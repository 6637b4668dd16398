import { describe, expect, it } from 'vitest'
import { integratedLoudness, loudnessOverTime, measure, pausesOf } from '../../../src/core/measure'
import {
  subBlockCount,
  subBlockEnergies,
  subBlockStart,
} from '../../../src/core/measure/loudness/block-energies'
import type { Sound } from '../../../src/core/sound/sound'
import { inChannels, joined, noise, scaled, steppedSine } from '../../setup/signals'
import { within } from './loudness-oracle'

const mono = (samples: Float32Array, sampleRate = 48_000): Sound => ({ sampleRate, channels: [samples] })
const pattern = (...values: number[]) => mono(Float32Array.from(values))

describe('levels', () => {
  it('a full-scale sine: peak 0, root mean square -3.01, crest factor 3.01 dB (sqrt 2, by definition)', () => {
    const measures = measure(mono(steppedSine(48_000, [[1, 0]], 750)))
    within(measures.samplePeakDbfs, 0, 1e-6)
    within(measures.rmsDbfs, -3.0103, 1e-4)
    within(measures.crestFactorDb, 3.0103, 1e-4)
  })

  it('the offset is the mean of each channel', () => {
    const tone = steppedSine(48_000, [[1, -20]])
    const { dcOffset } = measure({
      sampleRate: 48_000,
      channels: [tone.map((x) => x + 0.05), tone.map((x) => x - 0.2)],
    })
    expect(dcOffset[0]).toBeCloseTo(0.05, 6)
    expect(dcOffset[1]).toBeCloseTo(-0.2, 6)
  })

  const top = 32_767 / 32_768
  it.each([
    ['a run of three at full scale', [0, 1, 1, 1, 0], 3],
    ['the rails of 16-bit sound', [0, top, top, top, top, 0, -1, -1, -1], 7],
    ['a peak of two', [0, 1, 1, 0, -1, -1, 0], 0],
    ['a float file beyond full scale, still moving', [0.9, 1.2, 1.5, 1.4, 0.9], 0],
    ['a float file cut off beyond full scale', [0.9, 1.2, 1.2, 1.2, 0.9], 3],
    ['a flat top below full scale', [0.5, 0.9, 0.9, 0.9, 0.5], 0],
    ['from one rail to the other', [1, 1, -1, -1, 1, 1], 0],
    ['right up to the end', [0, 0, -1, -1, -1, -1], 4],
  ])('clipped samples: %s', (_, values, expected) => {
    expect(measure(pattern(...values)).clippedSamples).toBe(expected)
  })

  it('a click at either end has its full true peak', () => {
    for (const values of [[0.5, 0, 0, 0], [0, 0, 0, 0.5], [0.5]]) {
      within(measure(pattern(...values)).truePeakDbtp, -6.0206, 1e-4)
    }
  })

  it('the noise floor is the level of the pauses, not of the singing', () => {
    const room = noise(48_000, 4, 1, 8, (t) => (t % 2 < 1.5 ? 0.3 : 0.001))
    // Uniform noise in +-g has root mean square g / sqrt(3).
    within(measure(room).noiseFloorDbfs, 20 * Math.log10(0.001 / Math.sqrt(3)), 0.3)
  })

  it('muted stretches do not hide the noise floor; half a second is needed to tell', () => {
    const [samples = new Float32Array()] = noise(48_000, 1, 1, 8, () => 0.001).channels
    const muted = mono(joined([new Float32Array(96_000), samples]))
    within(measure(muted).noiseFloorDbfs, 20 * Math.log10(0.001 / Math.sqrt(3)), 0.3)
    expect(measure(mono(samples.subarray(0, 20_000))).noiseFloorDbfs).toBeNull()
  })

  it('the noise floor of what was made from a take is measured where the take pauses', () => {
    const [samples = new Float32Array()] = noise(48_000, 2, 1, 8, (t) => (t < 1 ? 0.001 : 0.3)).channels
    const take = mono(joined([new Float32Array(96_000), samples]))
    // A faint ring is left where nothing was; it is not the floor of the take.
    const ringing = mono(Float32Array.from(take.channels[0] ?? [], (value) => value / 2 || 1e-6))
    const floor = measure(take).noiseFloorDbfs ?? Number.NaN
    within(measure(ringing, { pauses: pausesOf(take) }).noiseFloorDbfs, floor - 6.0206, 1e-3)
    within(measure(ringing).noiseFloorDbfs, -120, 0.1)
    const silent = mono(new Float32Array(take.channels[0]?.length ?? 0))
    expect(measure(silent, { pauses: pausesOf(take) }).noiseFloorDbfs).toBeNull()
    expect(measure(take, { pauses: pausesOf(silent) }).noiseFloorDbfs).toBeNull()
  })
})

describe('the shortest sounds', () => {
  const tone = (seconds: number, sampleRate: number) =>
    mono(steppedSine(sampleRate, [[seconds, -20]], 997), sampleRate)

  it.each([8000, 11_025, 22_050, 44_100, 48_000, 192_000])(
    'at %i Hz: 400 ms for loudness, 3 s for short-term',
    (rate) => {
      const almost = measure(tone(0.399, rate))
      expect(almost.integratedLufs).toBeNull()
      expect(almost.momentaryMaxLufs).toBeNull()
      expect(almost.peakToLoudnessLu).toBeNull()
      within(almost.samplePeakDbfs, -20, 0.01)
      const enough = measure(tone(0.4, rate))
      within(enough.integratedLufs, -23.01, 0.05)
      expect(enough.shortTermMaxLufs).toBeNull()
      expect(enough.loudnessRangeLu).toBeNull()
      within(measure(tone(3, rate)).shortTermMaxLufs, -23.01, 0.05)
    },
  )

  it('sub-blocks follow true time where 10 ms is not a whole number of frames', () => {
    expect([0, 1, 2, 3, 4].map((i) => subBlockStart(i, 11_025))).toEqual([0, 110, 221, 331, 441])
    for (const rate of [8000, 11_025, 22_050, 44_100]) {
      for (let frames = 0; frames < 2000; frames++) {
        const count = subBlockCount(frames, rate)
        expect(subBlockStart(count, rate)).toBeLessThanOrEqual(frames)
        expect(subBlockStart(count + 1, rate)).toBeGreaterThan(frames)
      }
    }
  })

  it('the filter falls silent within a second, before its state becomes subnormal and slow', () => {
    const fading = mono(joined([steppedSine(48_000, [[0.5, 0]], 60), new Float32Array(48_000)]))
    expect(subBlockEnergies(fading).at(0)).toBeGreaterThan(0)
    expect(subBlockEnergies(fading).at(-1)).toBe(0)
  })

  it('long sounds are filtered in one go, though they are measured in steps: a constant is heard once', () => {
    const energies = subBlockEnergies(mono(new Float32Array(21 * 48_000).fill(0.5)))
    expect(energies[0]).toBeGreaterThan(1)
    expect(Math.max(...energies.subarray(200))).toBeLessThan(1e-12)
  })

  it('below -70 LUFS there is no integrated loudness, but the ungated ones remain', () => {
    const measures = measure(scaled(tone(4, 48_000), 10 ** (-60 / 20)))
    expect(measures.integratedLufs).toBeNull()
    expect(measures.loudnessRangeLu).toBeNull()
    within(measures.momentaryMaxLufs, -83.01, 0.01)
  })
})

describe('loudnessOverTime', () => {
  const sound = inChannels(
    48_000,
    joined([steppedSine(48_000, [[4, -20]], 997), new Float32Array(4 * 48_000)]),
    1,
  )

  it('element i is the window that ends at i hops; NaN before it is full and after the sound has gone', () => {
    const { hopSeconds, momentaryLufs, shortTermLufs } = loudnessOverTime(sound)
    expect(hopSeconds).toBe(0.1)
    expect(momentaryLufs).toHaveLength(81)
    expect(momentaryLufs.findIndex((value) => !Number.isNaN(value))).toBe(4)
    expect(shortTermLufs.findIndex((value) => !Number.isNaN(value))).toBe(30)
    within(momentaryLufs[40] ?? null, -23.01, 0.01)
    within(momentaryLufs[42] ?? null, -26.02, 0.05)
    // The filter rings on for a moment.
    expect(momentaryLufs[47]).toBeNaN()
    expect(shortTermLufs[73]).toBeNaN()
    within(shortTermLufs[55] ?? null, -26.02, 0.05)
  })

  it('rounds the hop to 10 ms and says so', () => {
    expect(loudnessOverTime(sound, 0.034).hopSeconds).toBe(0.03)
    expect(loudnessOverTime(sound, 0.034).momentaryLufs).toHaveLength(267)
  })

  it.each([0, -1, 0.001, Number.NaN, Number.POSITIVE_INFINITY])('refuses a hop of %d s', (hop) => {
    expect(() => loudnessOverTime(sound, hop)).toThrow(expect.objectContaining({ code: 'option' }))
  })
})

describe('sounds that no measure is defined for', () => {
  it.each([0, 7999, 192_001, Number.NaN])('a sample rate of %d Hz', (sampleRate) => {
    const sound = mono(new Float32Array(10), sampleRate)
    for (const call of [measure, integratedLoudness, loudnessOverTime]) {
      expect(() => call(sound)).toThrow(
        expect.objectContaining({ name: 'MeasureError', code: 'sample-rate' }),
      )
    }
  })

  it('six channels', () => {
    const sound = inChannels(48_000, new Float32Array(10), 6)
    expect(() => measure(sound)).toThrow(expect.objectContaining({ code: 'channels' }))
  })
})
