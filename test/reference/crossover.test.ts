import { describe, expect, it } from 'vitest'
import { chainOf, magnitudeDb } from '../../src/core'
import type { Biquad } from '../../src/core/dsp/filters/biquad'
import { linkwitzRiley4 } from '../../src/core/dsp/filters/crossover'
import { channel, impulse, stageWith, through } from '../setup/chains'
import { type Complex, frequencies, transformDb } from '../setup/spectrum'

// S. Linkwitz, "Active Crossover Networks for Noncoincident Drivers", J. Audio Eng. Soc. 24(1), 1976: each half of
// the 4th-order crossover is two 2nd-order Butterworth sections in series.

/** Transfer function of sections in series at one frequency, from its definition: H(z) at z = exp(jw). */
function transfer(sections: readonly Biquad[], frequencyHz: number, sampleRate: number): Complex {
  const w = (2 * Math.PI * frequencyHz) / sampleRate
  const polynomial = (c0: number, c1: number, c2: number): Complex => ({
    re: c0 + c1 * Math.cos(w) + c2 * Math.cos(2 * w),
    im: -c1 * Math.sin(w) - c2 * Math.sin(2 * w),
  })
  return sections.reduce<Complex>(
    (product, { b0, b1, b2, a1, a2 }) => {
      const numerator = polynomial(b0, b1, b2)
      const denominator = polynomial(1, a1, a2)
      const size = denominator.re ** 2 + denominator.im ** 2
      const re = (numerator.re * denominator.re + numerator.im * denominator.im) / size
      const im = (numerator.im * denominator.re - numerator.re * denominator.im) / size
      return { re: product.re * re - product.im * im, im: product.re * im + product.im * re }
    },
    { re: 1, im: 0 },
  )
}

const decibels = ({ re, im }: Complex) => 20 * Math.log10(Math.hypot(re, im))

describe('Linkwitz-Riley crossover of 4th order', () => {
  // 2nd-order Butterworth low-passes through the bilinear transform at 48 kHz: b0 b1 a1 a2, to eight decimals.
  const vectors: [number, number, number, number, number][] = [
    [1000, 0.00391613, 0.00783225, -1.81534108, 0.83100559],
    [5500, 0.08462538, 0.16925076, -1.0255429, 0.36404443],
    [6000, 0.09763107, 0.19526215, -0.94280904, 0.33333333],
  ]
  it.each(vectors)(
    'its low half at %i Hz is twice the Butterworth low-pass',
    (frequencyHz, b0, b1, a1, a2) => {
      const { low } = linkwitzRiley4(frequencyHz, 48_000)
      expect(low).toHaveLength(2)
      for (const section of low) {
        expect(section.b0).toBeCloseTo(b0, 7)
        expect(section.b1).toBeCloseTo(b1, 7)
        expect(section.b2).toBeCloseTo(b0, 7)
        expect(section.a1).toBeCloseTo(a1, 7)
        expect(section.a2).toBeCloseTo(a2, 7)
      }
    },
  )

  it('an octave from 5.5 kHz at 48 kHz, warped by the bilinear transform, its halves stand where worked out', () => {
    const { low, high } = linkwitzRiley4(5500, 48_000)
    expect(decibels(transfer(low, 2750, 48_000))).toBeCloseTo(-0.46196, 4)
    expect(decibels(transfer(high, 2750, 48_000))).toBeCloseTo(-25.71413, 4)
    expect(decibels(transfer(low, 11_000, 48_000))).toBeCloseTo(-29.67931, 4)
    expect(decibels(transfer(high, 11_000, 48_000))).toBeCloseTo(-0.28978, 4)
  })

  it.each([44_100, 48_000, 96_000])(
    'at %i Hz both halves are at -6.02 dB and in phase at the crossover, and their sum is flat to 0.01 dB',
    (sampleRate) => {
      for (const crossoverHz of [1000, 2500, 4000, 7000, 12_000]) {
        const { low, high, sum } = linkwitzRiley4(crossoverHz, sampleRate)
        const atCrossover = [low, high].map((half) => transfer(half, crossoverHz, sampleRate))
        for (const half of atCrossover) expect(decibels(half)).toBeCloseTo(-6.0206, 4)
        expect(atCrossover[0]?.re).toBeCloseTo(atCrossover[1]?.re ?? Number.NaN, 9)
        expect(atCrossover[0]?.im).toBeCloseTo(atCrossover[1]?.im ?? Number.NaN, 9)
        for (const frequencyHz of frequencies(10, 0.45 * sampleRate, 60)) {
          const [a, b] = [transfer(low, frequencyHz, sampleRate), transfer(high, frequencyHz, sampleRate)]
          const added = { re: a.re + b.re, im: a.im + b.im }
          expect(Math.abs(decibels(added))).toBeLessThan(0.01)
          const allPass = transfer([sum], frequencyHz, sampleRate)
          expect(Math.hypot(added.re - allPass.re, added.im - allPass.im)).toBeLessThan(1e-9)
        }
      }
    },
  )

  it.each([44_100, 48_000, 96_000])(
    'at %i Hz a de-esser with nothing to hold is flat to 0.01 dB',
    (sampleRate) => {
      for (const band of ['above', 'all'] as const) {
        const stage = stageWith('de-esser', { crossoverHz: 4000, thresholdDb: 0, band })
        const response = channel(through(impulse(sampleRate, sampleRate / 10), stage))
        for (const frequencyHz of frequencies(10, 0.45 * sampleRate, 40)) {
          expect(Math.abs(transformDb(response, frequencyHz, sampleRate)), `${frequencyHz} Hz`).toBeLessThan(
            0.01,
          )
        }
        expect(magnitudeDb(chainOf([stage]), [10, 4000], sampleRate)).toEqual(new Float64Array(2))
      }
    },
  )
})
