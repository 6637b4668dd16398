import { describe, expect, it } from 'vitest'
import { pulseSlope, pulseTables, tableLength } from '../../../src/demo/voice/pulse-table'

const rise = 0.4
const fall = 0.16

function harmonicPower(samples: ArrayLike<number>, k: number): number {
  let real = 0
  let imaginary = 0
  for (let i = 0; i < samples.length; i += 1) {
    real += (samples[i] ?? 0) * Math.cos((2 * Math.PI * k * i) / samples.length)
    imaginary += (samples[i] ?? 0) * Math.sin((2 * Math.PI * k * i) / samples.length)
  }
  return (2 * (real * real + imaginary * imaginary)) / samples.length ** 2
}

describe('glottal pulse', () => {
  // A. E. Rosenberg, JASA 49(2), 1971, pulse "C": (1 - cos(pi t / rise)) / 2, then cos(pi (t - rise) / (2 fall)).
  it.each([
    [0.1, 0.146446609],
    [0.2, 0.5],
    [0.4, 1],
    [0.48, Math.SQRT1_2],
    [0.8, 0],
  ])('has the published flow at %f of the cycle', (phase, flow) => {
    const steps = 20_000
    let sum = 0
    for (let i = 0; i < steps; i += 1)
      sum += (pulseSlope(((i + 0.5) / steps) * phase, rise, fall) * phase) / steps
    expect(sum).toBeCloseTo(flow, 4)
  })

  it('has a first harmonic 0.93 dB above the second', () => {
    // The Fourier series of that pulse: 6.95 dB in the flow, 6.02 dB less in its slope.
    const full = pulseTables(rise, fall)[0]
    const samples = full?.samples ?? []
    expect(10 * Math.log10(harmonicPower(samples, 1) / harmonicPower(samples, 2))).toBeCloseTo(0.933, 2)
  })

  it('keeps to its harmonics in every table, at one loudness, without direct current', () => {
    const tables = pulseTables(rise, fall)
    const first = harmonicPower(tables[0]?.samples ?? [], 1)
    for (const { harmonics, samples } of tables) {
      expect(samples.length).toBe(tableLength)
      expect(harmonicPower(samples, 1) / first).toBeCloseTo(1, 9)
      expect(harmonicPower(samples, harmonics)).toBeGreaterThan(1e-9)
      expect(harmonicPower(samples, harmonics + 1)).toBeLessThan(1e-20)
      expect(harmonicPower(samples, 0)).toBeLessThan(1e-20)
    }
  })
})
