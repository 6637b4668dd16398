import type { Sound } from '../../sound/sound'
import { finished, STEP_FRAMES, type Steps } from '../../sound/steps'
import { ShortSpectra } from './short-spectra'

/** Powers below and above a frequency along a sound, one value for each hop. */
export interface BandPowers {
  readonly hopSeconds: number
  /** Mean squares, full scale = 1; element i is of the window around i * hopSeconds. */
  readonly below: Float64Array
  readonly above: Float64Array
}

/** What lies lower is rumble, not voice. */
const LOWEST_HZ = 100

/** Splits `sound` at `splitHz` every 5 ms with Hann windows of about 10 ms; reaches into silence at both ends. */
export function bandPowers(sound: Sound, splitHz: number): BandPowers {
  return finished(bandPowerSteps(new ShortSpectra(sound), splitHz))
}

/** {@link bandPowers} in steps. */
export function* bandPowerSteps(spectra: ShortSpectra, splitHz: number): Steps<BandPowers> {
  const { count, binHz, scale } = spectra
  const below = new Float64Array(count)
  const above = new Float64Array(count)
  const lowestBin = Math.ceil(LOWEST_HZ / binHz)
  const splitBin = Math.round(splitHz / binHz)
  const hopsInStep = Math.max(1, Math.floor(STEP_FRAMES / spectra.windowFrames))
  for (let i = 0; i < count; i++) {
    const powers = spectra.powersAt(i)
    below[i] = scale * sum(powers, lowestBin, splitBin)
    above[i] = scale * sum(powers, splitBin, powers.length)
    if ((i + 1) % hopsInStep === 0) yield (i + 1) / count
  }
  return { hopSeconds: ShortSpectra.hopSeconds, below, above }
}

function sum(values: Float64Array, from: number, to: number): number {
  let total = 0
  for (let i = from; i < to; i++) total += values[i] ?? 0
  return total
}
