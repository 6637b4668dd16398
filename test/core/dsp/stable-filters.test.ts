import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { magnitudeDb } from '../../../src/core'
import type { Biquad } from '../../../src/core/dsp/filters/biquad'
import { linkwitzRiley4 } from '../../../src/core/dsp/filters/crossover'
import { type BandSettings, bandParameters, bandSections } from '../../../src/core/stages/equaliser/band'
import { band } from '../../setup/chains'
import { holds, SEED, sampleRates } from '../../setup/random-chains'

const DESIGNS = ['matched', 'bilinear'] as const

/** Both poles inside the unit circle: the triangle |a2| < 1, |a1| < 1 + a2, and all coefficients finite. */
function isStable({ b0, b1, b2, a1, a2 }: Biquad): boolean {
  return [b0, b1, b2].every(Number.isFinite) && Math.abs(a2) < 1 && Math.abs(a1) < 1 + a2
}

function valuesOf<Key extends 'shape' | 'slopeDbPerOctave'>(key: Key): unknown[] {
  const row = bandParameters[key]
  return row.type === 'choice' ? row.options.map(({ value }) => value) : []
}

const SHAPES = ['high-pass', 'low-pass', 'bell', 'low-shelf', 'high-shelf', 'notch'] as const
const SLOPES = [6, 12, 18, 24, 36, 48] as const

describe(`filters of every shape and design are stable (seed ${SEED})`, () => {
  it('are all looked at', () => {
    expect(valuesOf('shape').toSorted()).toEqual(SHAPES.toSorted())
    expect(valuesOf('slopeDbPerOctave')).toEqual(SLOPES)
  })

  it('at the corners of the ranges and between: 10 Hz to 24 kHz, Q 0.1 to 20, +-24 dB, 8 to 192 kHz', () => {
    const unstable: string[] = []
    const look = (settings: BandSettings, sampleRate: number) => {
      for (const design of DESIGNS) {
        if (bandSections(settings, design, sampleRate).every(isStable)) continue
        unstable.push(`${design} ${JSON.stringify(settings)} at ${sampleRate} Hz`)
      }
    }
    for (const sampleRate of [8000, 11_025, 44_100, 48_000, 96_000, 192_000]) {
      for (const frequencyHz of [10, 100, 1000, 2000, 5000, 8000, 12_000, 16_000, 20_000, 24_000]) {
        for (const q of [0.1, 0.3, 0.5, Math.SQRT1_2, 1, 2, 4, 8, 20]) {
          for (const gainDb of [-24, -12, -4, -0.1, 0.1, 4, 12, 24]) {
            for (const shape of ['bell', 'low-shelf', 'high-shelf'] as const)
              look(band({ shape, frequencyHz, q, gainDb }), sampleRate)
          }
          for (const shape of ['high-pass', 'low-pass', 'notch'] as const)
            look(band({ shape, frequencyHz, q }), sampleRate)
        }
        for (const slopeDbPerOctave of SLOPES) {
          for (const shape of ['high-pass', 'low-pass'] as const)
            look(band({ shape, frequencyHz, slopeDbPerOctave }), sampleRate)
        }
      }
    }
    expect(unstable).toEqual([])
  })

  const share = fc.integer({ min: 0, max: 1e6 }).map((millionths) => millionths / 1e6)
  const anyBand = fc.record({
    shape: fc.constantFrom(...SHAPES),
    frequencyHz: share.map((x) => 10 * 2400 ** x),
    gainDb: share.map((x) => 48 * x - 24),
    q: share.map((x) => 0.1 * 200 ** x),
    slopeDbPerOctave: fc.constantFrom(...SLOPES),
  })

  it('anywhere in the ranges, and no shelf or bell rises or falls beyond its gain by more than its Q explains', () => {
    holds(fc.tuple(anyBand, sampleRates), 3000, ([settings, sampleRate]) => {
      const one = band(settings)
      for (const design of DESIGNS) {
        expect(bandSections(one, design, sampleRate).every(isStable)).toBe(true)
        if (settings.shape !== 'bell' && !settings.shape.endsWith('shelf')) continue
        // A shelf of high Q overshoots by up to Q at either end of its slope.
        const most = Math.abs(settings.gainDb) + 20 * Math.log10(Math.max(1, settings.q)) + 1
        const at = Array.from({ length: 40 }, (_, i) => (sampleRate / 2) * (i / 39))
        for (const db of magnitudeDb(one, at, sampleRate, design)) expect(Math.abs(db)).toBeLessThan(most)
      }
    })
  })

  it('crossovers too', () => {
    holds(fc.tuple(share, sampleRates), 300, ([x, sampleRate]) => {
      const { low, high, sum } = linkwitzRiley4(Math.min(1000 * 12 ** x, 0.49 * sampleRate), sampleRate)
      expect([...low, ...high, sum].every(isStable)).toBe(true)
    })
  })
})
