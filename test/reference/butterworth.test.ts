import { describe, expect, it } from 'vitest'
import { magnitudeDb } from '../../src/core'
import { butterworthSections } from '../../src/core/dsp/filters/butterworth'
import { band } from '../setup/chains'

const SLOPES = [6, 12, 18, 24, 36, 48] as const
const RATES = [8000, 16_000, 44_100, 48_000, 96_000, 192_000]

describe('Butterworth filters: the poles lie evenly on a circle (S. Butterworth, 1930)', () => {
  // Section Qs from the closed form q_k = 1 / (2 sin((2k - 1) pi / (2n))), as in the tables of handbooks.
  const tables: [number, number[]][] = [
    [1, []],
    [2, [Math.SQRT1_2]],
    [3, [1]],
    [4, [0.541196, 1.306563]],
    [5, [0.618034, 1.618034]],
    [6, [0.517638, Math.SQRT1_2, 1.931852]],
    [7, [0.554958, 0.801938, 2.24698]],
    [8, [0.509796, 0.601345, 0.899976, 2.562915]],
  ]
  it.each(tables)('order %i has the section Qs of the tables', (order, expected) => {
    const sections = butterworthSections(order)
    const qs = sections.flatMap((section) => (section.order === 2 ? [section.q] : []))
    expect(qs).toHaveLength(expected.length)
    for (const [i, q] of qs.entries()) expect(q).toBeCloseTo(expected[i] ?? Number.NaN, 6)
    expect(sections.filter((section) => section.order === 1)).toHaveLength(order % 2)
  })

  it('the polynomial of order 4 multiplies out to 1 2.613126 3.414214 2.613126 1', () => {
    const [first = 0, second = 0] = butterworthSections(4).map((s) => (s.order === 2 ? 1 / s.q : Number.NaN))
    expect(first + second).toBeCloseTo(2.613126, 6)
    expect(2 + first * second).toBeCloseTo(3.414214, 6)
  })

  for (const shape of ['high-pass', 'low-pass'] as const) {
    for (const design of ['matched', 'bilinear'] as const) {
      it(`${design} ${shape}: -3.01 dB at the corner, every slope, rates from 8 to 192 kHz`, () => {
        for (const sampleRate of RATES) {
          for (const slopeDbPerOctave of SLOPES) {
            for (const frequencyHz of [20, 100, 1000, 3000, 0.3 * sampleRate, 0.48 * sampleRate]) {
              const settings = band({ shape, frequencyHz, slopeDbPerOctave, q: Math.SQRT1_2 })
              const [db = 0] = magnitudeDb(settings, [frequencyHz], sampleRate, design)
              expect(db, `${frequencyHz} of ${sampleRate} Hz, ${slopeDbPerOctave}`).toBeCloseTo(-3.0103, 4)
            }
          }
        }
      })

      it(`${design} ${shape}: two octaves out it has fallen as |H|^2 = 1 / (1 + x^2n) says`, () => {
        for (const slopeDbPerOctave of SLOPES) {
          const settings = band({ shape, frequencyHz: 400, slopeDbPerOctave, q: Math.SQRT1_2 })
          const away = shape === 'low-pass' ? 1600 : 100
          const [db = 0] = magnitudeDb(settings, [away], 192_000, design)
          // 0.05 dB: what the bilinear transform adds at 1.6 kHz of 192 kHz for the steepest slope.
          expect(Math.abs(db + 10 * Math.log10(1 + 4 ** (slopeDbPerOctave / 3)))).toBeLessThan(0.05)
        }
      })
    }
  }

  it('Q belongs to the 12 dB per octave pass alone', () => {
    const at = (slopeDbPerOctave: 12 | 24, q: number) =>
      magnitudeDb(band({ shape: 'high-pass', slopeDbPerOctave, q }), [1000], 48_000)[0]
    expect(at(12, 2)).toBeCloseTo(20 * Math.log10(2), 6)
    expect(at(24, 2)).toBe(at(24, 0.5))
  })
})
