/**
 * Coefficients of one second-order section, normalised so that a0 = 1:
 * `y[n] = b0 x[n] + b1 x[n-1] + b2 x[n-2] - a1 y[n-1] - a2 y[n-2]`.
 * First-order sections leave b2 and a2 at 0.
 */
export interface Biquad {
  readonly b0: number
  readonly b1: number
  readonly b2: number
  readonly a1: number
  readonly a2: number
}

/** `section` with its output multiplied by a linear `gain`. */
export function scaled(section: Biquad, gain: number): Biquad {
  return { ...section, b0: section.b0 * gain, b1: section.b1 * gain, b2: section.b2 * gain }
}

/**
 * The section that undoes `section`: poles and zeros swapped.
 * Stable only where `section` is minimum-phase, as bells and shelves are.
 */
export function inverted({ b0, b1, b2, a1, a2 }: Biquad): Biquad {
  return { b0: 1 / b0, b1: a1 / b0, b2: a2 / b0, a1: b1 / b0, a2: b2 / b0 }
}

/**
 * Squared magnitude of a section at `phi = sin^2(w / 2)`, w the angular frequency in radians per frame.
 * Written in phi, not cos(w), because 1 - cos(w) loses every digit at low frequencies.
 * Source: R. Bristow-Johnson, "Audio EQ Cookbook" (W3C Group Note), evaluation of |H|^2 from coefficients.
 */
export function magnitudeSquared({ b0, b1, b2, a1, a2 }: Biquad, phi: number): number {
  const numerator = (b0 + b1 + b2) ** 2 - 4 * phi * (b0 * b1 + 4 * b0 * b2 + b1 * b2 - 4 * phi * b0 * b2)
  const denominator = (1 + a1 + a2) ** 2 - 4 * phi * (a1 + 4 * a2 + a1 * a2 - 4 * phi * a2)
  return Math.max(0, numerator) / denominator
}

/** `sin^2(w / 2)` of a frequency in Hz at a sample rate in Hz: the argument of {@link magnitudeSquared}. */
export function halfAngleSine(frequencyHz: number, sampleRate: number): number {
  return Math.sin((Math.PI * frequencyHz) / sampleRate) ** 2
}

/** The lowest magnitude reported, as power: at the centre of a notch there is nothing left to take a log of. */
const FLOOR_POWER = 1e-40

/** Magnitude of sections in series in dB; never below -400 dB. */
export function magnitudeOfSectionsDb(
  sections: readonly Biquad[],
  frequenciesHz: ArrayLike<number>,
  sampleRate: number,
): Float64Array {
  return Float64Array.from(frequenciesHz, (frequencyHz) => {
    const phi = halfAngleSine(frequencyHz, sampleRate)
    let power = 1
    for (const section of sections) power *= magnitudeSquared(section, phi)
    return 10 * Math.log10(Math.max(power, FLOOR_POWER))
  })
}

/** Filters stay below this part of the sample rate: at 0.5 the bilinear transform has no finite answer. */
const HIGHEST_PART_OF_RATE = 0.49

/** `frequencyHz` brought below 0.49 of the sample rate, so that one chain serves every rate. */
export function limitedFrequencyHz(frequencyHz: number, sampleRate: number): number {
  return Math.min(frequencyHz, HIGHEST_PART_OF_RATE * sampleRate)
}
