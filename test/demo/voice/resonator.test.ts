import { describe, expect, it } from 'vitest'
import { resonate, resonator } from '../../../src/demo/voice/resonator'
import { powerAt } from '../analysis'

describe('resonator', () => {
  // D. H. Klatt, "Software for a cascade/parallel formant synthesizer", JASA 67(3), 1980, equations 1 and 2,
  // worked out to 12 digits.
  it.each([
    [500, 60, 10_000, 0.096407804147, 1.86659484925, -0.963002653397],
    [500, 60, 48_000, 0.004280731356, 1.987896048936, -0.992176780293],
    [1090, 90, 48_000, 0.02023839156, 1.96804975993, -0.98828815149],
    [2440, 120, 48_000, 0.100418936283, 1.883995827069, -0.984414763352],
  ])(
    'has the coefficients of the published equations at %i Hz, %i Hz wide, rate %i',
    (f, bw, rate, a, b, c) => {
      const found = resonator(f, bw, rate)
      expect(found.a).toBeCloseTo(a, 11)
      expect(found.b).toBeCloseTo(b, 11)
      expect(found.c).toBeCloseTo(c, 11)
    },
  )

  it('rings at its frequency, with gain 1 at 0 Hz', () => {
    const impulse = new Float64Array(48_000)
    impulse[0] = 1
    resonate(impulse, 730, 80, 48_000)
    expect(impulse.reduce((sum, sample) => sum + sample, 0)).toBeCloseTo(1, 9)
    const gainDb = (f: number) => {
      let real = 0
      let imaginary = 0
      impulse.forEach((sample, i) => {
        real += sample * Math.cos((2 * Math.PI * f * i) / 48_000)
        imaginary += sample * Math.sin((2 * Math.PI * f * i) / 48_000)
      })
      return 10 * Math.log10(real * real + imaginary * imaginary)
    }
    // The equations evaluated on the unit circle.
    expect(gainDb(730)).toBeCloseTo(19.23, 1)
    expect(gainDb(690) - gainDb(730)).toBeCloseTo(-2.9, 0)
    expect(powerAt(impulse, 0, 4800, 730, 48_000)).toBeGreaterThan(powerAt(impulse, 0, 4800, 650, 48_000))
  })
})
