import type { Sound } from '../../sound/sound'
import { finished, partOf, type Steps } from '../../sound/steps'
import { MeasureError } from '../error'
import { SUB_BLOCKS_PER_SECOND, subBlockEnergySteps } from './block-energies'
import { ABSOLUTE_GATE_POWER, powerToLufs } from './gating'
import { MOMENTARY_TENTHS, SHORT_TERM_TENTHS, TENTH, windowPowerSteps } from './windows'

/** Loudness as a meter shows it while the sound plays. */
export interface LoudnessOverTime {
  readonly hopSeconds: number
  /** Element i: the loudness, LUFS, of the 3 s that end at i * hopSeconds; NaN where not measurable. */
  readonly shortTermLufs: Float32Array
  /** The same of the last 400 ms. */
  readonly momentaryLufs: Float32Array
}

/**
 * Momentary and short-term loudness along a sound (EBU Tech 3341). A value is NaN, not measurable, while its
 * window is not yet full and wherever it is not above the absolute gate of -70 LUFS.
 *
 * @param sound 1 to 5 channels, 8 to 192 kHz
 * @param hopSeconds distance between values, at least 0.01, 0.1 by default; rounded to a whole number of 10 ms, and the
 *   result says what was used
 * @param energies of its sub-blocks, where they are known already
 * @throws MeasureError `option` for another hop, `sample-rate` or `channels`
 */
export function loudnessOverTime(
  sound: Sound,
  hopSeconds?: number,
  energies?: Float64Array,
): LoudnessOverTime {
  return finished(loudnessOverTimeSteps(sound, hopSeconds, energies))
}

/** {@link loudnessOverTime} in steps. */
export function* loudnessOverTimeSteps(
  sound: Sound,
  hopSeconds = 0.1,
  energies?: Float64Array,
): Steps<LoudnessOverTime> {
  if (!(hopSeconds >= 1 / SUB_BLOCKS_PER_SECOND && hopSeconds < Number.POSITIVE_INFINITY)) {
    throw new MeasureError('option', `hop of ${hopSeconds} s (expected a finite one of at least 0.01)`)
  }
  const hop = Math.round(hopSeconds * SUB_BLOCKS_PER_SECOND)
  const known = energies ?? (yield* partOf(subBlockEnergySteps(sound), 0, ENERGIES_PART))
  const done = energies ? 0 : ENERGIES_PART
  const middle = (done + 1) / 2
  const count = Math.floor(known.length / hop) + 1
  function* series(tenths: number): Steps<Float32Array> {
    const powers = yield* windowPowerSteps(known, tenths, sound.sampleRate)
    return Float32Array.from({ length: count }, (_, i) => audibleLufs(powers[i * hop - tenths * TENTH]))
  }
  return {
    hopSeconds: hop / SUB_BLOCKS_PER_SECOND,
    shortTermLufs: yield* partOf(series(SHORT_TERM_TENTHS), done, middle),
    momentaryLufs: yield* partOf(series(MOMENTARY_TENTHS), middle, 1),
  }
}

/** How much of the work the energies are, where they are not known. */
const ENERGIES_PART = 0.9

/** Loudness of a power above the absolute gate; NaN below it, and for none. */
function audibleLufs(power = 0): number {
  return power > ABSOLUTE_GATE_POWER ? (powerToLufs(power) ?? Number.NaN) : Number.NaN
}
