import { describe, expect, it } from 'vitest'
import { type BandSettings, type EqualiserDesign, magnitudeDb } from '../../src/core'
import type { Biquad } from '../../src/core/dsp/filters/biquad'
import * as matched from '../../src/core/dsp/filters/matched'
import { prototypeDb } from '../setup/analogue-prototypes'
import { band } from '../setup/chains'
import { frequencies } from '../setup/spectrum'

/** Largest distance in dB of a band from its analogue prototype, from 20 Hz to `toHz`. */
function distanceDb(
  settings: BandSettings,
  design: EqualiserDesign,
  sampleRate: number,
  toHz = 16_000,
): number {
  const at = frequencies(20, toHz, 400)
  const { shape, frequencyHz, gainDb, q } = settings
  return magnitudeDb(settings, at, sampleRate, design).reduce(
    (most, db, i) => Math.max(most, Math.abs(db - prototypeDb(shape, (at[i] ?? 0) / frequencyHz, gainDb, q))),
    0,
  )
}

describe('matched designs: M. Vicanek, "Matched Second Order Digital Filters" (2016), coefficients at 48 kHz', () => {
  // Worked out from the paper's equations to twelve decimals: b0 b1 b2 a1 a2. The bell with the cookbook's
  // symmetric Q, for which the poles take Q sqrt(G).
  const vectors: [string, Biquad, [number, number, number, number, number]][] = [
    [
      'low-pass 1 kHz',
      matched.lowPass(1000, Math.SQRT1_2, 48_000),
      [0.012318405813, 0.003301522151, 0, -1.815384527623, 0.831004455587],
    ],
    [
      'low-pass 12 kHz',
      matched.lowPass(12_000, Math.SQRT1_2, 48_000),
      [0.639583203271, 0.176421516896, 0, -0.292447944767, 0.108452664934],
    ],
    [
      'high-pass 100 Hz',
      matched.highPass(100, Math.SQRT1_2, 48_000),
      [0.990786698863, -1.981573397725, 0.990786698863, -1.981488513979, 0.981658282604],
    ],
    [
      'bell 10 kHz, +6 dB, Q 1',
      matched.bell(10_000, 6, 1, 48_000),
      [1.404960415367, -0.652554334468, 0.216049591398, -0.427402665433, 0.39585833773],
    ],
    [
      'bell 5 kHz, +12 dB, Q 2',
      matched.bell(5000, 12, 2, 48_000),
      [1.255177284546, -1.527320140138, 0.653329000642, -1.467544725561, 0.848730870612],
    ],
  ]
  it.each(vectors)('%s', (_, { b0, b1, b2, a1, a2 }, expected) => {
    for (const [i, value] of [b0, b1, b2, a1, a2].entries()) {
      expect(Math.abs(value - (expected[i] ?? Number.NaN))).toBeLessThan(6e-13)
    }
  })
})

describe('matched designs against the analogue prototypes of the "Audio EQ Cookbook" (W3C Group Note)', () => {
  // Most distance allowed up to 16 kHz, and least that the bilinear design must show for the lesson to hold.
  const cases: [string, BandSettings, number, number][] = [
    ['bell 8 kHz +4 dB, Q 1', band({ frequencyHz: 8000, gainDb: 4 }), 0.3, 0.6],
    ['bell 10 kHz -6 dB, Q 1', band({ frequencyHz: 10_000, gainDb: -6 }), 0.4, 1.2],
    [
      'high shelf 8 kHz +4 dB, Q 0.71',
      band({ shape: 'high-shelf', frequencyHz: 8000, gainDb: 4, q: Math.SQRT1_2 }),
      0.02,
      0.3,
    ],
    [
      'high shelf 12 kHz +6 dB, Q 0.71',
      band({ shape: 'high-shelf', frequencyHz: 12_000, gainDb: 6, q: Math.SQRT1_2 }),
      0.1,
      0.9,
    ],
  ]
  it.each(
    cases.map(([name, settings, most, leastBilinear]) => {
      const own = distanceDb(settings, 'matched', 44_100)
      const other = distanceDb(settings, 'bilinear', 44_100)
      const text = `${own.toFixed(3)} dB off, bilinear ${other.toFixed(3)} dB`
      return { name, own, other, most, leastBilinear, text }
    }),
  )('$name at 44.1 kHz: $text', ({ own, other, most, leastBilinear }) => {
    expect(own).toBeLessThan(most)
    expect(other).toBeGreaterThan(leastBilinear)
  })

  it('shelves of q 0.4 to 2, whatever the corner and gain: within 5 % of the gain or 0.1 dB, nearer than bilinear', () => {
    for (const shape of ['low-shelf', 'high-shelf'] as const) {
      for (const frequencyHz of [100, 1000, 4000, 8000, 12_000, 16_000]) {
        for (const gainDb of [-12, -4, 4, 12]) {
          for (const q of [0.4, 0.5, Math.SQRT1_2, 1, 1.4]) {
            const settings = band({ shape, frequencyHz, gainDb, q })
            const own = distanceDb(settings, 'matched', 44_100)
            const name = `${shape} ${frequencyHz} Hz ${gainDb} dB q ${q}: ${own}`
            expect(own, name).toBeLessThan(Math.max(0.1, 0.05 * Math.abs(gainDb)))
            expect(own, name).toBeLessThanOrEqual(distanceDb(settings, 'bilinear', 44_100) + 1e-6)
          }
          // A shelf of q 2 rings by several dB around its corner, which the fit follows less closely.
          const narrow = band({ shape, frequencyHz, gainDb, q: 2 })
          expect(distanceDb(narrow, 'matched', 44_100)).toBeLessThan(0.5)
          expect(distanceDb(narrow, 'matched', 44_100)).toBeLessThan(
            distanceDb(narrow, 'bilinear', 44_100) + 1e-6,
          )
        }
      }
    }
  })

  it('the lower -3 dB point of a notch lies where the prototype has it, narrow or wide, up to 20 kHz', () => {
    for (const frequencyHz of [50, 1000, 8000, 16_000, 20_000]) {
      for (const q of [0.1, 0.5, 1, 5, 20]) {
        // |1 - x^2| = x / q at half power.
        const edge = frequencyHz * (Math.sqrt(1 + 1 / (4 * q * q)) - 1 / (2 * q))
        const settings = band({ shape: 'notch', frequencyHz, q })
        const [atEdge = 0, atCentre = 0] = magnitudeDb(settings, [edge, frequencyHz], 44_100, 'matched')
        expect(atEdge).toBeCloseTo(-10 * Math.log10(2), 6)
        // What the rounding of 64-bit coefficients leaves of it: -113 dB for the narrowest.
        expect(atCentre).toBeLessThan(-100)
        expect(prototypeDb('notch', edge / frequencyHz, 0, q)).toBeCloseTo(-10 * Math.log10(2), 9)
      }
    }
  })
})
