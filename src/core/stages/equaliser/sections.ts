import { type Biquad, halfAngleSine, magnitudeSquared } from '../../dsp/filters/biquad'
import { type BandSettings, bandSections, type EqualiserDesign, type EqualiserSettings } from './band'

/** The quietest a magnitude is reported, dB: at the centre of a notch there is nothing left to take a log of. */
const FLOOR_POWER = 1e-40

/** All bands in series. */
export function sectionsOf({ bands, design }: EqualiserSettings, sampleRate: number): Biquad[] {
  return bands.flatMap((band) => bandSections(band, design, sampleRate))
}

/**
 * Magnitude of one band in dB, 0 where it is switched off; never below -400 dB.
 * Worked out from the very coefficients that filter the sound.
 */
export function bandMagnitudeDb(
  band: BandSettings,
  frequenciesHz: ArrayLike<number>,
  sampleRate: number,
  design: EqualiserDesign,
): Float64Array {
  return magnitudeOfSectionsDb(bandSections(band, design, sampleRate), frequenciesHz, sampleRate)
}

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
