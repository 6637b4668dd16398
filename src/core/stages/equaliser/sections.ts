import { type Biquad, magnitudeOfSectionsDb } from '../../dsp/filters/biquad'
import { type BandSettings, bandSections, type EqualiserDesign, type EqualiserSettings } from './band'

/** All bands in series. */
export function sectionsOf({ bands, design }: EqualiserSettings, sampleRate: number): Biquad[] {
  return bands.flatMap((band) => bandSections(band, design, sampleRate))
}

/**
 * Magnitude of one band in dB, 0 where it is switched off; never below -400 dB.
 * Computed from the same coefficients that filter the sound.
 */
export function bandMagnitudeDb(
  band: BandSettings,
  frequenciesHz: ArrayLike<number>,
  sampleRate: number,
  design: EqualiserDesign,
): Float64Array {
  return magnitudeOfSectionsDb(bandSections(band, design, sampleRate), frequenciesHz, sampleRate)
}
