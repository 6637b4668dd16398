import type { BandShape } from '../../src/core'

/**
 * Magnitude in dB of the analogue prototypes H(s), as printed in R. Bristow-Johnson, "Audio EQ Cookbook" (W3C
 * Group Note), evaluated at s = jx, x = frequency / centre frequency. Each shape as numerator and denominator
 * polynomials, coefficients of s^2, s, 1.
 */
export function prototypeDb(shape: BandShape, x: number, gainDb: number, q: number): number {
  const [numerator, denominator] = polynomials(shape, 10 ** (gainDb / 40), q)
  return 10 * Math.log10(powerAt(numerator, x) / powerAt(denominator, x))
}

type Polynomial = readonly [s2: number, s1: number, s0: number]

function polynomials(shape: BandShape, a: number, q: number): [Polynomial, Polynomial] {
  const root = Math.sqrt(a)
  switch (shape) {
    case 'low-pass':
      return [
        [0, 0, 1],
        [1, 1 / q, 1],
      ]
    case 'high-pass':
      return [
        [1, 0, 0],
        [1, 1 / q, 1],
      ]
    case 'notch':
      return [
        [1, 0, 1],
        [1, 1 / q, 1],
      ]
    case 'bell':
      return [
        [1, a / q, 1],
        [1, 1 / (a * q), 1],
      ]
    case 'low-shelf':
      return [
        [a, (a * root) / q, a * a],
        [a, root / q, 1],
      ]
    case 'high-shelf':
      return [
        [a * a, (a * root) / q, a],
        [1, root / q, a],
      ]
  }
}

function powerAt([s2, s1, s0]: Polynomial, x: number): number {
  return (s0 - s2 * x * x) ** 2 + (s1 * x) ** 2
}
