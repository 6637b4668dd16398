import type { Sound } from '../../sound/sound'
import { MeasureError } from '../error'
import { SUB_BLOCKS_PER_SECOND, subBlockEnergies } from './block-energies'
import { ABSOLUTE_GATE_POWER, powerToLufs } from './gating'
import { MOMENTARY_TENTHS, SHORT_TERM_TENTHS, TENTH, windowPowers } from './windows'

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
 * @param hopSeconds distance between values, at least 0.01; rounded to a whole number of 10 ms, and the
 *   result says what was used
 * @param energies of its sub-blocks, where they are known already
 * @throws MeasureError `option` for another hop, `sample-rate` or `channels`
 */
export function loudnessOverTime(
  sound: Sound,
  hopSeconds = 0.1,
  energies = subBlockEnergies(sound),
): LoudnessOverTime {
  if (!(hopSeconds >= 1 / SUB_BLOCKS_PER_SECOND && hopSeconds < Number.POSITIVE_INFINITY)) {
    throw new MeasureError('option', `hop of ${hopSeconds} s (expected a finite one of at least 0.01)`)
  }
  const hop = Math.round(hopSeconds * SUB_BLOCKS_PER_SECOND)
  const series = (tenths: number) => {
    const powers = windowPowers(energies, tenths, sound.sampleRate)
    return Float32Array.from({ length: Math.floor(energies.length / hop) + 1 }, (_, i) => {
      const power = powers[i * hop - tenths * TENTH] ?? 0
      return power > ABSOLUTE_GATE_POWER ? (powerToLufs(power) ?? Number.NaN) : Number.NaN
    })
  }
  return {
    hopSeconds: hop / SUB_BLOCKS_PER_SECOND,
    shortTermLufs: series(SHORT_TERM_TENTHS),
    momentaryLufs: series(MOMENTARY_TENTHS),
  }
}
