import { exp2 } from './exp2'

/** Beyond this, tanh is 1 to the last bit of a 64-bit float. */
const SATURATED = 20

/** Hyperbolic tangent by {@link exp2}: the same bits in every engine; absolute error below 1e-13. */
export function fastTanh(x: number): number {
  if (x > SATURATED) return 1
  if (x < -SATURATED) return -1
  return 1 - 2 / (exp2(2 * Math.LOG2E * x) + 1)
}

/**
 * The saturator's curve: `(tanh(g x + b) - tanh(b)) / (g (1 - tanh(b)^2))`. Slope 1 at 0, so that quiet sound
 * passes at its level whatever the drive; b = 0 gives odd harmonics only, b other than 0 adds even ones.
 * No source: chosen here for its closed Fourier series at b = 0, that of tanh(d sin).
 * @param drive linear gain g into the curve, above 0
 * @param bias offset b on it
 */
export function saturationCurve(x: number, drive: number, bias: number): number {
  const rest = Math.tanh(bias)
  return (Math.tanh(drive * x + bias) - rest) / (drive * (1 - rest * rest))
}
