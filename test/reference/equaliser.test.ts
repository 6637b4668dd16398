import { describe, expect, it } from 'vitest'
import { type BandSettings, chainOf, magnitudeDb } from '../../src/core'
import * as bilinear from '../../src/core/dsp/filters/bilinear'
import type { Biquad } from '../../src/core/dsp/filters/biquad'
import { band, channel, equaliserWith, impulse, stageWith, through } from '../setup/chains'
import { frequencies, transformDb } from '../setup/spectrum'

/** The shelf's q for a slope S: 1/Q = sqrt((A + 1/A)(1/S - 1) + 2), "Audio EQ Cookbook". */
function qOfSlope(slope: number, gainDb: number): number {
  const a = 10 ** (gainDb / 40)
  return 1 / Math.sqrt((a + 1 / a) * (1 / slope - 1) + 2)
}

/** The bell's q for a bandwidth in octaves: 1/(2Q) = sinh(ln 2 / 2 * BW * w0 / sin w0), "Audio EQ Cookbook". */
function qOfBandwidth(octaves: number, frequencyHz: number, sampleRate: number): number {
  const w0 = (2 * Math.PI * frequencyHz) / sampleRate
  return 1 / (2 * Math.sinh(((Math.LN2 / 2) * octaves * w0) / Math.sin(w0)))
}

// Twelve decimals are given, so half a unit of the twelfth is what they can be off by.
const TWELVE_DECIMALS = 6e-13

describe('bilinear designs: R. Bristow-Johnson, "Audio EQ Cookbook" (W3C Group Note), coefficients at 48 kHz', () => {
  // Worked out from the note's formulas to twelve decimals: b0 b1 b2 a1 a2, normalised to a0 = 1.
  const vectors: [string, Biquad, [number, number, number, number, number]][] = [
    [
      'high-pass 100 Hz, Q 0.7071',
      bilinear.highPass(100, Math.SQRT1_2, 48_000),
      [0.99078669794, -1.981573395881, 0.99078669794, -1.981488509145, 0.981658282617],
    ],
    [
      'low-pass 5 kHz, Q 0.7071',
      bilinear.lowPass(5000, Math.SQRT1_2, 48_000),
      [0.072230875326, 0.144461750652, 0.072230875326, -1.109228792618, 0.398152293921],
    ],
    [
      'bell 1 kHz, +6 dB, Q 1',
      bilinear.bell(1000, 6, 1, 48_000),
      [1.04395308699, -1.895320723937, 0.86772228476, -1.895320723937, 0.91167537175],
    ],
    [
      'bell 250 Hz, -4 dB, Q 1.4',
      bilinear.bell(250, -4, 1.4, 48_000),
      [0.994649710586, -1.969949192707, 0.976354782611, -1.969949192707, 0.971004493197],
    ],
    [
      'bell 3 kHz, -12 dB, Q 4',
      bilinear.bell(3000, -12, 4, 48_000),
      [0.934757315199, -1.68676689902, 0.890986020011, -1.68676689902, 0.82574333521],
    ],
    [
      'bell 1 kHz, +6 dB, one octave',
      bilinear.bell(1000, 6, qOfBandwidth(1, 1000, 48_000), 48_000),
      [1.031577524036, -1.919976913795, 0.904966794863, -1.919976913795, 0.936544318898],
    ],
    [
      'low shelf 200 Hz, -6 dB, S 1',
      bilinear.lowShelf(200, -6, qOfSlope(1, -6), 48_000),
      [0.993595701553, -1.956241003701, 0.963120016015, -1.956004771289, 0.956951949979],
    ],
    [
      'high shelf 10 kHz, +3 dB, S 1',
      bilinear.highShelf(10_000, 3, qOfSlope(1, 3), 48_000),
      [1.220459054045, -0.494488989936, 0.244998515141, -0.208283662449, 0.1792522417],
    ],
    [
      'high shelf 8 kHz, +6 dB, S 0.5',
      bilinear.highShelf(8000, 6, qOfSlope(0.5, 6), 48_000),
      [1.548194136502, -1.064638846722, 0.174113781303, -0.369556534048, 0.027225605131],
    ],
    [
      'notch 50 Hz, Q 10',
      bilinear.notch(50, 10, 48_000),
      [0.999672860157, -1.999302897656, 0.999672860157, -1.999302897656, 0.999345720314],
    ],
  ]
  it.each(vectors)('%s', (_, { b0, b1, b2, a1, a2 }, expected) => {
    for (const [i, value] of [b0, b1, b2, a1, a2].entries()) {
      expect(Math.abs(value - (expected[i] ?? Number.NaN))).toBeLessThan(TWELVE_DECIMALS)
    }
  })

  const at = [20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 15_000, 20_000]
  const responses: [string, BandSettings, number[]][] = [
    [
      'high-pass 100 Hz',
      band({ shape: 'high-pass', frequencyHz: 100, q: Math.SQRT1_2 }),
      [-27.966, -12.3047, -3.0103, -0.2632, -0.0069, -0.0004, 0, 0, 0, 0, 0],
    ],
    [
      'bell 1 kHz +6 dB, Q 1',
      band({ gainDb: 6 }),
      [0.0026, 0.0162, 0.0652, 0.2665, 1.8794, 6, 1.866, 0.2486, 0.0476, 0.0125, 0.002],
    ],
    [
      'low shelf 200 Hz -6 dB, S 1',
      band({ shape: 'low-shelf', frequencyHz: 200, gainDb: -6, q: Math.SQRT1_2 }),
      [-5.9994, -5.9748, -5.6236, -3, -0.1608, -0.0103, -0.0006, 0, 0, 0, 0],
    ],
    [
      'high shelf 10 kHz +3 dB, S 1',
      band({ shape: 'high-shelf', frequencyHz: 10_000, gainDb: 3, q: Math.SQRT1_2 }),
      [0, 0, 0, 0, 0, 0.0002, 0.0026, 0.1126, 1.5, 2.8029, 2.9945],
    ],
  ]
  it.each(responses)('%s: response in dB, to the four decimals given', (_, settings, expected) => {
    magnitudeDb(settings, at, 48_000, 'bilinear').forEach((db, i) => {
      expect(Math.abs(db - (expected[i] ?? Number.NaN)), `${at[i]} Hz`).toBeLessThan(6e-5)
    })
  })

  it('passes stand at 20 log10 Q at their frequency, bells at their gain, shelves at half of theirs', () => {
    for (const sampleRate of [8000, 44_100, 48_000, 192_000]) {
      for (const q of [0.5, Math.SQRT1_2, 1, 2, 8]) {
        for (const shape of ['low-pass', 'high-pass'] as const) {
          const db = magnitudeDb(band({ shape, q }), [1000], sampleRate, 'bilinear')[0]
          expect(db).toBeCloseTo(20 * Math.log10(q), 8)
        }
        const at1k = (shape: 'bell' | 'low-shelf' | 'high-shelf', gainDb: number) =>
          magnitudeDb(band({ shape, q, gainDb }), [1000], sampleRate, 'bilinear')[0]
        expect(at1k('bell', 9)).toBeCloseTo(9, 8)
        expect(at1k('low-shelf', -8)).toBeCloseTo(-4, 8)
        expect(at1k('high-shelf', 10)).toBeCloseTo(5, 8)
      }
    }
  })

  it('a bell of +N dB and one of -N dB at equal frequency and Q are a wire', () => {
    for (const design of ['bilinear', 'matched'] as const) {
      const wire = equaliserWith([band({ gainDb: 13, q: 3 }), band({ gainDb: -13, q: 3 })], design)
      for (const db of magnitudeDb(wire, frequencies(20, 20_000, 50), 44_100))
        expect(Math.abs(db)).toBeLessThan(1e-9)
    }
  })
})

describe('what is drawn is what is heard: an impulse through the chain, transformed, equals the computed response', () => {
  // Frames enough for the slowest band here to fall below the resolution of a 32-bit float.
  const cases: [string, number, BandSettings[]][] = [
    ['20 Hz bell +12 dB Q 2 at 192 kHz', 192_000, [band({ frequencyHz: 20, gainDb: 12, q: 2 })]],
    [
      '20 Hz high-pass 48 dB per octave at 192 kHz',
      192_000,
      [band({ shape: 'high-pass', frequencyHz: 20, slopeDbPerOctave: 48 })],
    ],
    [
      'a vocal chain at 44.1 kHz',
      44_100,
      [
        band({ shape: 'high-pass', frequencyHz: 80, slopeDbPerOctave: 24 }),
        band({ frequencyHz: 320, gainDb: -3, q: 1.4 }),
        band({ shape: 'notch', frequencyHz: 1200, q: 8 }),
        band({ frequencyHz: 3000, gainDb: 4 }),
        band({ shape: 'high-shelf', frequencyHz: 8000, gainDb: 4, q: 0.7 }),
        band({ shape: 'low-pass', frequencyHz: 18_000, slopeDbPerOctave: 18 }),
      ],
    ],
    [
      'the same shapes near half the rate at 8 kHz',
      8000,
      [
        band({ shape: 'low-shelf', frequencyHz: 3500, gainDb: -9, q: 2 }),
        band({ shape: 'high-shelf', frequencyHz: 3000, gainDb: 9, q: 0.5 }),
        band({ frequencyHz: 24_000, gainDb: 6, q: 0.4 }),
      ],
    ],
  ]
  it.each(cases)('%s, within 0.01 dB', (_, sampleRate, bands) => {
    for (const design of ['matched', 'bilinear'] as const) {
      const stages = [equaliserWith(bands, design), stageWith('gain', { gainDb: -4.5 })]
      const response = channel(through(impulse(sampleRate, sampleRate), ...stages))
      const at = [20, ...frequencies(40, 0.45 * sampleRate, 24)]
      magnitudeDb(chainOf(stages), at, sampleRate).forEach((computed, i) => {
        // Below -80 dB the rounding of the 32-bit samples is as large as what is looked for.
        if (computed < -80) return
        const measured = transformDb(response, at[i] ?? 0, sampleRate)
        expect(Math.abs(measured - computed), `${design}, ${at[i]} Hz`).toBeLessThan(0.01)
      })
    }
  })
})
