import type { Sound } from '../../sound/sound'
import { finished, partOf, type Steps } from '../../sound/steps'
import { subBlockEnergySteps } from './block-energies'
import { gatedPower, powerToLufs } from './gating'
import { loudnessRange } from './loudness-range'
import { everyTenth, MOMENTARY_TENTHS, SHORT_TERM_TENTHS, windowPowerSteps } from './windows'

/** Loudness of a whole sound; null where the sound is too short or too quiet for the measure. */
export interface Loudness {
  readonly integratedLufs: number | null
  /** Largest loudness of any 400 ms, looked for every 10 ms. Ungated. */
  readonly momentaryMaxLufs: number | null
  /** Largest loudness of any 3 s, looked for every 10 ms. Ungated. */
  readonly shortTermMaxLufs: number | null
  readonly loudnessRangeLu: number | null
}

/** How much of the work the energies are, where they are not known. */
const ENERGIES_PART = 0.9

/**
 * Every loudness measure of EBU Tech 3341 and Tech 3342 in one pass.
 *
 * @param sound 1 to 5 channels, 8 to 192 kHz
 * @param energies of its sub-blocks, where they are known already
 * @throws MeasureError `sample-rate` or `channels`
 */
export function loudness(sound: Sound, energies?: Float64Array): Loudness {
  return finished(loudnessSteps(sound, energies))
}

/** {@link loudness} in steps. */
export function* loudnessSteps(sound: Sound, energies?: Float64Array): Steps<Loudness> {
  const known = energies ?? (yield* partOf(subBlockEnergySteps(sound), 0, ENERGIES_PART))
  const done = energies ? 0 : ENERGIES_PART
  const middle = (done + 1) / 2
  const { sampleRate } = sound
  const momentary = yield* partOf(windowPowerSteps(known, MOMENTARY_TENTHS, sampleRate), done, middle)
  const integratedLufs = powerToLufs(gatedPower(everyTenth(momentary)) ?? 0)
  const shortTerm = yield* partOf(windowPowerSteps(known, SHORT_TERM_TENTHS, sampleRate), middle, 1)
  return {
    integratedLufs,
    momentaryMaxLufs: powerToLufs(largest(momentary)),
    shortTermMaxLufs: powerToLufs(largest(shortTerm)),
    loudnessRangeLu: loudnessRange(everyTenth(shortTerm)),
  }
}

/**
 * Integrated loudness alone, LUFS (ITU-R BS.1770-5, Annex 1); null when the sound is shorter than 400 ms or
 * nowhere above -70 LUFS.
 *
 * @param energies of its sub-blocks, where they are known already
 * @throws MeasureError `sample-rate` or `channels`
 */
export function integratedLoudness(sound: Sound, energies?: Float64Array): number | null {
  return finished(integratedLoudnessSteps(sound, energies))
}

/** {@link integratedLoudness} by the energies of a sound's sub-blocks, or of some of them in a row. */
export function integratedLoudnessOf(energies: Float64Array, sampleRate: number): number | null {
  return finished(loudnessOfSteps(energies, sampleRate))
}

/** {@link integratedLoudness} in steps. */
export function* integratedLoudnessSteps(sound: Sound, energies?: Float64Array): Steps<number | null> {
  const known = energies ?? (yield* partOf(subBlockEnergySteps(sound), 0, ENERGIES_PART))
  return yield* partOf(loudnessOfSteps(known, sound.sampleRate), energies ? 0 : ENERGIES_PART, 1)
}

function* loudnessOfSteps(energies: Float64Array, sampleRate: number): Steps<number | null> {
  const momentary = yield* windowPowerSteps(energies, MOMENTARY_TENTHS, sampleRate)
  return powerToLufs(gatedPower(everyTenth(momentary)) ?? 0)
}

function largest(powers: Float64Array): number {
  let most = 0
  for (const power of powers) if (power > most) most = power
  return most
}
