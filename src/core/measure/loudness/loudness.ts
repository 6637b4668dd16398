import type { Sound } from '../../sound/sound'
import { subBlockEnergies } from './block-energies'
import { gatedPower, powerToLufs } from './gating'
import { loudnessRange } from './loudness-range'
import { everyTenth, MOMENTARY_TENTHS, SHORT_TERM_TENTHS, windowPowers } from './windows'

/** Loudness of a whole sound; null where the sound is too short or too quiet for the measure. */
export interface Loudness {
  readonly integratedLufs: number | null
  /** Largest loudness of any 400 ms, looked for every 10 ms. Ungated. */
  readonly momentaryMaxLufs: number | null
  /** Largest loudness of any 3 s, looked for every 10 ms. Ungated. */
  readonly shortTermMaxLufs: number | null
  readonly loudnessRangeLu: number | null
}

/**
 * Every loudness measure of EBU Tech 3341 and Tech 3342 in one pass.
 *
 * @param sound 1 to 5 channels, 8 to 192 kHz
 * @param energies of its sub-blocks, where they are known already
 * @throws MeasureError `sample-rate` or `channels`
 */
export function loudness(sound: Sound, energies = subBlockEnergies(sound)): Loudness {
  const momentary = windowPowers(energies, MOMENTARY_TENTHS, sound.sampleRate)
  const shortTerm = windowPowers(energies, SHORT_TERM_TENTHS, sound.sampleRate)
  return {
    integratedLufs: powerToLufs(gatedPower(everyTenth(momentary)) ?? 0),
    momentaryMaxLufs: powerToLufs(largest(momentary)),
    shortTermMaxLufs: powerToLufs(largest(shortTerm)),
    loudnessRangeLu: loudnessRange(everyTenth(shortTerm)),
  }
}

/**
 * Integrated loudness alone, LUFS (ITU-R BS.1770-5, Annex 1); null when the sound is shorter than 400 ms or
 * nowhere above -70 LUFS.
 *
 * @throws MeasureError `sample-rate` or `channels`
 */
export function integratedLoudness(sound: Sound): number | null {
  return integratedLoudnessOf(subBlockEnergies(sound), sound.sampleRate)
}

/** {@link integratedLoudness} of a sound, or of whole sub-blocks of one, by their energies (see `subBlockEnergySteps`). */
export function integratedLoudnessOf(energies: Float64Array, sampleRate: number): number | null {
  const momentary = windowPowers(energies, MOMENTARY_TENTHS, sampleRate)
  return powerToLufs(gatedPower(everyTenth(momentary)) ?? 0)
}

function largest(powers: Float64Array): number {
  return powers.reduce((most, power) => Math.max(most, power), 0)
}
