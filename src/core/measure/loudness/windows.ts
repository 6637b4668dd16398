import { subBlockStart } from './block-energies'

/** A tenth of a second, in sub-blocks; every window and hop of the standards is a multiple of it. */
export const TENTH = 10
/** The 400 ms window of momentary loudness and of the gating blocks, in tenths of a second. */
export const MOMENTARY_TENTHS = 4
/** The 3 s window of short-term loudness (EBU Tech 3341), in tenths of a second. */
export const SHORT_TERM_TENTHS = 30

/**
 * Mean weighted power of every window of `tenths` tenths of a second that lies wholly within the sound:
 * element i is the window that begins with sub-block i (every 10 ms). Empty when the sound is shorter than
 * the window.
 *
 * Each window is added up afresh, from sums over tenths: a running sum would carry the rounding errors of
 * loud passages into silent ones.
 */
export function windowPowers(energies: Float64Array, tenths: number, sampleRate: number): Float64Array {
  const sums = tenthSums(energies)
  const length = tenths * TENTH
  const powers = new Float64Array(Math.max(0, energies.length - length + 1))
  for (let i = 0; i < powers.length; i++) {
    let sum = 0
    for (let at = i; at < i + length; at += TENTH) sum += sums[at] ?? 0
    powers[i] = sum / (subBlockStart(i + length, sampleRate) - subBlockStart(i, sampleRate))
  }
  return powers
}

/** Every tenth element: the windows at the 100 ms hop of the gating blocks (400 ms, 75 % overlap). */
export function everyTenth(powers: Float64Array): Float64Array {
  return powers.filter((_, i) => i % TENTH === 0)
}

function tenthSums(energies: Float64Array): Float64Array {
  const sums = new Float64Array(Math.max(0, energies.length - TENTH + 1))
  for (let i = 0; i < sums.length; i++) {
    let sum = 0
    for (let k = i; k < i + TENTH; k++) sum += energies[k] ?? 0
    sums[i] = sum
  }
  return sums
}
