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
