import { allPass, highPass, lowPass } from './bilinear'
import type { Biquad } from './biquad'

/** A two-way split. `low` and `high` are sections in series; their sum is `sum`. */
export interface Crossover {
  readonly low: readonly Biquad[]
  readonly high: readonly Biquad[]
  /** The all-pass that low and high add up to. */
  readonly sum: Biquad
}

/**
 * Linkwitz-Riley crossover of 4th order: each half two Butterworth sections in series, -6.02 dB at the crossover,
 * both in phase everywhere; the sum is a second-order all-pass with q = 0.7071.
 * Source: S. Linkwitz, "Active Crossover Networks for Noncoincident Drivers", J. Audio Eng. Soc. 24(1), 1976;
 * the sum from s^4 + 1 = (s^2 + sqrt(2) s + 1)(s^2 - sqrt(2) s + 1), which the bilinear transform keeps exactly.
 * @param frequencyHz crossover, below half the sample rate
 */
export function linkwitzRiley4(frequencyHz: number, sampleRate: number): Crossover {
  const low = lowPass(frequencyHz, Math.SQRT1_2, sampleRate)
  const high = highPass(frequencyHz, Math.SQRT1_2, sampleRate)
  return { low: [low, low], high: [high, high], sum: allPass(frequencyHz, Math.SQRT1_2, sampleRate) }
}
