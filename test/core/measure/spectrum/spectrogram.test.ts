import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  MeasureError,
  SPECTROGRAM_LOWEST_HZ,
  SPECTROGRAM_ROWS,
  type SpectrogramColumns,
  spectrogram,
  spectrogramDb,
  spectrogramHighestHz,
} from '../../../../src/core/measure'
import { excerpt, frameCount, type Sound } from '../../../../src/core/sound/sound'
import { inChannels, noise, steppedSine } from '../../../setup/signals'

const RATE = 48_000
/** Half a step of the bytes, and what of a sine falls outside a row that is several bins wide. */
const SINE_TOLERANCE_DB = 0.3
/** Mean of 46 or more columns of noise: 0.5 dB is some three standard deviations of the lowest rows. */
const NOISE_TOLERANCE_DB = 1

/** The middle of a row, Hz, by the definition: rows tile 50 Hz to the highest frequency in equal ratios. */
function middleHz(row: number, sampleRate = RATE): number {
  return 50 * (Math.min(20_000, sampleRate / 2) / 50) ** ((row + 0.5) / SPECTROGRAM_ROWS)
}

function columns(sound: Sound, hopFrames: number): SpectrogramColumns {
  return { fromFrame: 0, hopFrames, count: Math.ceil(frameCount(sound) / hopFrames) }
}

function columnOf(levels: Uint8Array, column: number): number[] {
  const start = column * SPECTROGRAM_ROWS
  return Array.from(levels.subarray(start, start + SPECTROGRAM_ROWS), spectrogramDb)
}

function loudestRow(levelsDb: readonly number[]): number {
  return levelsDb.indexOf(Math.max(...levelsDb))
}

describe('spectrogram against signals of known power', () => {
  it.each([64, 512, 2048, 16_384])(
    'a full-scale sine has -3.01 dBFS (A^2 / 2) in the row around it and little elsewhere, with columns of %i frames',
    (hopFrames) => {
      const row = 84
      const sound = inChannels(RATE, steppedSine(RATE, [[2, 0]], middleHz(row)), 2)
      const { count, ...from } = columns(sound, hopFrames)
      const levels = spectrogram(sound, { ...from, count })
      const inside = columnOf(levels, Math.floor(count / 2))
      expect(loudestRow(inside)).toBe(row)
      expect(Math.abs((inside[row] ?? 0) + 3.01)).toBeLessThan(SINE_TOLERANCE_DB)
      // An octave below, only side lobes of the window are left.
      expect(inside[row - 11]).toBeLessThan(-60)
    },
  )

  it('stands on the row of its frequency at any rate, from the lowest row to the highest', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(22_050, 44_100, 48_000, 96_000),
        fc.nat(SPECTROGRAM_ROWS - 1),
        (sampleRate, row) => {
          const hz = middleHz(row, sampleRate)
          const sound = inChannels(sampleRate, steppedSine(sampleRate, [[1, -20]], hz), 1)
          const levels = spectrogram(sound, columns(sound, Math.round(sampleRate / 4)))
          // Low rows are narrower than a bin: their neighbours are as loud.
          expect(Math.abs(loudestRow(columnOf(levels, 1)) - row)).toBeLessThanOrEqual(hz < 300 ? 6 : 1)
        },
      ),
      { numRuns: 20 },
    )
  })

  it.each([64, 1024, 32_768])(
    'white noise has the share of its power that each row has of the spectrum, with columns of %i frames',
    (hopFrames) => {
      // Uniform in +-0.5: mean square 1 / 12.
      const sound = noise(RATE, Math.max(4, (46 * hopFrames) / RATE), 1, 11, () => 0.5)
      const { count, ...from } = columns(sound, hopFrames)
      const levels = spectrogram(sound, { ...from, count })
      for (let row = 0; row < SPECTROGRAM_ROWS; row++) {
        let power = 0
        for (let c = 2; c < count - 2; c++)
          power += 10 ** (spectrogramDb(levels[c * SPECTROGRAM_ROWS + row] ?? 0) / 10) / (count - 4)
        const ratio = (spectrogramHighestHz(RATE) / SPECTROGRAM_LOWEST_HZ) ** (0.5 / SPECTROGRAM_ROWS)
        const widthHz = middleHz(row) * (ratio - 1 / ratio)
        const expected = 10 * Math.log10(((1 / 12) * widthHz) / (RATE / 2))
        expect(Math.abs(10 * Math.log10(power) - expected), `row ${row}`).toBeLessThan(NOISE_TOLERANCE_DB)
      }
    },
  )

  it('a click stands in the columns whose windows reach it, at its energy, and in no other', () => {
    const samples = new Float32Array(RATE)
    samples[24_000 + 32] = 1
    const levels = spectrogram(inChannels(RATE, samples, 1), columns(inChannels(RATE, samples, 1), 64))
    // |X| = 1 in every bin: mean square 2 / (size * sum of squares of the window) in each; the window is 512 frames.
    const binHz = RATE / 512
    const row = 90
    const rowHz = middleHz(row) * 2 * Math.sinh((0.5 * Math.log(20_000 / 50)) / SPECTROGRAM_ROWS)
    const expected = 10 * Math.log10((2 / (512 * 512 * 0.375)) * (rowHz / binHz))
    expect(columnOf(levels, 375)[row]).toBeCloseTo(expected, 0)
    const isMarked = (column: number) => columnOf(levels, column).some((db) => db > -120)
    expect([370, 371, 372, 378, 379, 380].map(isMarked)).toEqual([false, false, true, true, false, false])
  })
})

describe('spectrogram', () => {
  it('has an attack where it happens: fine columns see it to within a hundredth of a second', () => {
    const sound = inChannels(
      RATE,
      steppedSine(
        RATE,
        [
          [0.5, null],
          [0.5, -10],
        ],
        5000,
      ),
      1,
    )
    const levels = spectrogram(sound, columns(sound, 64))
    const row = Array.from({ length: SPECTROGRAM_ROWS }, (_, k) => Math.abs(middleHz(k) - 5000)).reduce(
      (best, distance, k, all) => (distance < (all[best] ?? 0) ? k : best),
      0,
    )
    const first = Array.from({ length: 750 }, (_, c) => columnOf(levels, c)[row] ?? 0).findIndex(
      (db) => db > -30,
    )
    expect(Math.abs((first * 64) / RATE - 0.5)).toBeLessThan(0.01)
  })

  it('of a part is the part of the whole, wherever it begins, and silence around the sound', () => {
    const sound = noise(RATE, 2, 2, 5, (at) => 0.3 * at)
    const whole = spectrogram(sound, { fromFrame: 0, hopFrames: 256, count: 200 })
    const part = spectrogram(sound, { fromFrame: 256 * 100, hopFrames: 256, count: 50 })
    expect(part).toEqual(whole.subarray(100 * SPECTROGRAM_ROWS, 150 * SPECTROGRAM_ROWS))
    const cut = excerpt(sound, 256 * 50, RATE)
    const shifted = spectrogram(cut, { fromFrame: 256 * 50, hopFrames: 256, count: 50 })
    expect(shifted).toEqual(part)
    expect(Math.max(...spectrogram(sound, { fromFrame: -9000, hopFrames: 256, count: 2 }))).toBe(0)
  })

  it('averages long columns over windows that lie apart: what sounds for half of one is 3 dB less', () => {
    const row = 60
    const sine = (stretches: [number, number | null][]) =>
      inChannels(RATE, steppedSine(RATE, stretches, middleHz(row)), 1)
    const at = (sound: Sound) =>
      columnOf(spectrogram(sound, { fromFrame: 0, hopFrames: 4 * RATE, count: 1 }), 0)[row] ?? 0
    const half = sine([
      [2, -6],
      [2, null],
    ])
    expect(at(sine([[4, -6]])) - at(half)).toBeCloseTo(3, 0)
  })

  it('of nothing is silence, and of a hop that is none an error', () => {
    for (const frames of [0, 1, 100]) {
      const silence = inChannels(RATE, new Float32Array(frames), 1)
      const levels = spectrogram(silence, { fromFrame: 0, hopFrames: 64, count: 4 })
      expect(levels).toEqual(new Uint8Array(4 * SPECTROGRAM_ROWS))
    }
    const sound = noise(RATE, 0.1, 1, 1, () => 1)
    for (const hopFrames of [0, -1, 1.5, Number.NaN])
      expect(() => spectrogram(sound, { fromFrame: 0, hopFrames, count: 1 })).toThrow(MeasureError)
  })
})
