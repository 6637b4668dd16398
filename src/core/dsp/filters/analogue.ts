/**
 * Squared magnitudes of the analogue prototypes at `x = frequency / centre frequency`.
 * Source: R. Bristow-Johnson, "Audio EQ Cookbook" (W3C Group Note), the prototypes H(s) at s = jx.
 */

/** Bell, H(s) = (s^2 + s A/Q + 1) / (s^2 + s/(A Q) + 1), A = 10^(gainDb / 40). */
export function bellMagnitudeSquared(x: number, gainDb: number, q: number): number {
  const a = 10 ** (gainDb / 40)
  const detuning = (1 - x * x) ** 2
  return (detuning + ((x * a) / q) ** 2) / (detuning + (x / (a * q)) ** 2)
}

/** High shelf, H(s) = A (A s^2 + s sqrt(A)/Q + 1) / (s^2 + s sqrt(A)/Q + A), A = 10^(gainDb / 40). */
export function highShelfMagnitudeSquared(x: number, gainDb: number, q: number): number {
  const a = 10 ** (gainDb / 40)
  const damping = (a / (q * q)) * x * x
  return (a * a * ((1 - a * x * x) ** 2 + damping)) / ((a - x * x) ** 2 + damping)
}
