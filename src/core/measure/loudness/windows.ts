import { STEP_FRAMES, type Steps } from '../../sound/steps'
import { subBlockStart } from './block-energies'

/** A tenth of a second, in sub-blocks; every window and hop of the standards is a multiple of it. */
export const TENTH = 10
/** The 400 ms window of momentary loudness and of the gating blocks, in tenths of a second. */
export const MOMENTARY_TENTHS = 4
/** The 3 s window of short-term loudness (EBU Tech 3341), in tenths of a second. */
export const SHORT_TERM_TENTHS = 30

/** Windows added up in one step. */
const WINDOWS_IN_STEP = STEP_FRAMES / 4

/**
 * Mean weighted power, in steps, of every window of `tenths` tenths of a second that lies wholly within the sound:
 * element i is the window that begins with sub-block i (every 10 ms). Empty when the sound is shorter than
 * the window.
 *
 * Each window is added up afresh, from sums over tenths: a running sum would carry the rounding errors of
 * loud passages into silent ones.
 */
export function* windowPowerSteps(
  energies: Float64Array,
  tenths: number,
  sampleRate: number,
): Steps<Float64Array> {
  const length = tenths * TENTH
  const sums = new Float64Array(Math.max(0, energies.length - TENTH + 1))
  const powers = new Float64Array(Math.max(0, energies.length - length + 1))
  for (let from = 0; from < sums.length; from += WINDOWS_IN_STEP) {
    const to = Math.min(sums.length, from + WINDOWS_IN_STEP)
    for (let i = from; i < to; i++) sums[i] = sumOf(energies, i, TENTH, 1)
    yield (0.5 * to) / sums.length
  }
  for (let from = 0; from < powers.length; from += WINDOWS_IN_STEP) {
    const to = Math.min(powers.length, from + WINDOWS_IN_STEP)
    for (let i = from; i < to; i++) {
      const frames = subBlockStart(i + length, sampleRate) - subBlockStart(i, sampleRate)
      powers[i] = sumOf(sums, i, length, TENTH) / frames
    }
    yield 0.5 + (0.5 * to) / powers.length
  }
  return powers
}

/** Every tenth element: the windows at the 100 ms hop of the gating blocks (400 ms, 75 % overlap). */
export function everyTenth(powers: Float64Array): Float64Array {
  return Float64Array.from({ length: Math.ceil(powers.length / TENTH) }, (_, i) => powers[i * TENTH] ?? 0)
}

/** Sum of every `step`-th of the `length` values from `from` on. */
function sumOf(values: Float64Array, from: number, length: number, step: number): number {
  let sum = 0
  for (let i = from; i < from + length; i += step) sum += values[i] ?? 0
  return sum
}
