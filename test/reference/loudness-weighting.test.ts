import { describe, expect, it } from 'vitest'
import { type Biquad, halfAngleSine, magnitudeSquared } from '../../src/core/dsp/filters/biquad'
import { type KWeighting, kWeighting } from '../../src/core/measure/loudness/k-weighting'

/** ITU-R BS.1770-5, Annex 1, Tables 1 and 2: the filter at 48 kHz. */
const TABLE_1: Biquad = {
  b0: 1.53512485958697,
  b1: -2.69169618940638,
  b2: 1.19839281085285,
  a1: -1.69065929318241,
  a2: 0.73248077421585,
}
const TABLE_2: Biquad = { b0: 1, b1: -2, b2: 1, a1: -1.99004745483398, a2: 0.99007225036621 }

const COEFFICIENTS = ['b0', 'b1', 'b2', 'a1', 'a2'] as const

describe('ITU-R BS.1770-5, Annex 1', () => {
  it('the filter at 48 kHz has the coefficients of Tables 1 and 2', () => {
    const { shelf, highPass } = kWeighting(48_000)
    for (const name of COEFFICIENTS) {
      expect(shelf[name]).toBeCloseTo(TABLE_1[name], 13)
      expect(highPass[name]).toBeCloseTo(TABLE_2[name], 13)
    }
  })

  it('"-0.691 cancels out the K-weighting gain for 997 Hz", at every rate', () => {
    for (const sampleRate of [8000, 11_025, 22_050, 44_100, 48_000, 88_200, 96_000, 192_000]) {
      expect(gainDb(kWeighting(sampleRate), 997, sampleRate)).toBeCloseTo(0.691, 4)
    }
  })

  it('other rates have "the same frequency response" as the tables, to 0.03 dB up to 16 kHz', () => {
    const table = { shelf: TABLE_1, highPass: TABLE_2 }
    for (const sampleRate of [44_100, 88_200, 96_000, 192_000]) {
      for (let hz = 20; hz <= 16_000; hz *= 1.1) {
        const difference = gainDb(kWeighting(sampleRate), hz, sampleRate) - gainDb(table, hz, 48_000)
        expect(Math.abs(difference), `${hz} Hz at ${sampleRate}`).toBeLessThan(0.03)
      }
    }
  })
})

function gainDb({ shelf, highPass }: KWeighting, hz: number, sampleRate: number): number {
  const phi = halfAngleSine(hz, sampleRate)
  return 10 * Math.log10(magnitudeSquared(shelf, phi) * magnitudeSquared(highPass, phi))
}
