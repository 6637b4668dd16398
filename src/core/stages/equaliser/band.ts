import * as bilinear from '../../dsp/filters/bilinear'
import { type Biquad, limitedFrequencyHz } from '../../dsp/filters/biquad'
import { butterworthSections } from '../../dsp/filters/butterworth'
import * as matched from '../../dsp/filters/matched'
import type { ParameterTable } from '../parameter'
import { gainParameter } from '../shared-parameters'

export type BandShape = 'high-pass' | 'low-pass' | 'bell' | 'low-shelf' | 'high-shelf' | 'notch'
export type SlopeDbPerOctave = 6 | 12 | 18 | 24 | 36 | 48
export type EqualiserDesign = 'matched' | 'bilinear'

/** One band of the equaliser. Settings that a shape does not use are kept, so that changing the shape loses nothing. */
export interface BandSettings {
  readonly on: boolean
  readonly shape: BandShape
  readonly frequencyHz: number
  readonly gainDb: number
  readonly q: number
  readonly slopeDbPerOctave: SlopeDbPerOctave
}

/** Settings of the equaliser. */
export interface EqualiserSettings {
  readonly bands: readonly BandSettings[]
  readonly design: EqualiserDesign
}

/** The most second-order sections one band takes: 48 dB per octave is eighth order. */
export const MAX_SECTIONS = 4

/** Which settings a shape uses, besides its frequency. Of the pass filters, only those of 12 dB per octave use Q. */
export function usedBandSettings({
  shape,
  slopeDbPerOctave,
}: Pick<BandSettings, 'shape' | 'slopeDbPerOctave'>): { gain: boolean; q: boolean; slope: boolean } {
  const pass = shape === 'high-pass' || shape === 'low-pass'
  return {
    gain: !pass && shape !== 'notch',
    q: !pass || slopeDbPerOctave === 12,
    slope: pass,
  }
}

/** The sections of one band, in series; none where it changes nothing (off, or 0 dB). */
export function bandSections(band: BandSettings, design: EqualiserDesign, sampleRate: number): Biquad[] {
  if (!band.on) return []
  const designs = design === 'matched' ? matched : bilinear
  const { gainDb, q } = band
  const frequencyHz = limitedFrequencyHz(band.frequencyHz, sampleRate)
  switch (band.shape) {
    case 'bell':
      return gainDb === 0 ? [] : [designs.bell(frequencyHz, gainDb, q, sampleRate)]
    case 'low-shelf':
      return gainDb === 0 ? [] : [designs.lowShelf(frequencyHz, gainDb, q, sampleRate)]
    case 'high-shelf':
      return gainDb === 0 ? [] : [designs.highShelf(frequencyHz, gainDb, q, sampleRate)]
    case 'notch':
      return [designs.notch(frequencyHz, q, sampleRate)]
    case 'high-pass':
      return passSections(band, (sectionQ) =>
        sectionQ === null
          ? designs.highPassFirstOrder(frequencyHz, sampleRate)
          : designs.highPass(frequencyHz, sectionQ, sampleRate),
      )
    case 'low-pass':
      return passSections(band, (sectionQ) =>
        sectionQ === null
          ? designs.lowPassFirstOrder(frequencyHz, sampleRate)
          : designs.lowPass(frequencyHz, sectionQ, sampleRate),
      )
  }
}

function passSections(
  { q, slopeDbPerOctave }: BandSettings,
  sectionOf: (q: number | null) => Biquad,
): Biquad[] {
  if (slopeDbPerOctave === 12) return [sectionOf(q)]
  return butterworthSections(slopeDbPerOctave / 6).map((section) =>
    sectionOf(section.order === 2 ? section.q : null),
  )
}

/** One row for each setting of a band. */
export const bandParameters: ParameterTable<BandSettings> = {
  on: { type: 'switch', label: 'On', default: true, help: 'Switches this band on or off.' },
  shape: {
    type: 'choice',
    label: 'Shape',
    options: [
      { value: 'high-pass', label: 'high-pass' },
      { value: 'low-shelf', label: 'low shelf' },
      { value: 'bell', label: 'bell' },
      { value: 'notch', label: 'notch' },
      { value: 'high-shelf', label: 'high shelf' },
      { value: 'low-pass', label: 'low-pass' },
    ],
    default: 'bell',
    help: 'What the band does around its frequency.',
  },
  frequencyHz: {
    type: 'number',
    label: 'Frequency',
    unit: 'Hz',
    min: 10,
    max: 24000,
    default: 1000,
    scale: 'logarithmic',
    step: 0.005,
    digits: 0,
    help: 'Centre of a bell or notch, midpoint of a shelf, corner (3 dB down) of a pass filter.',
  },
  gainDb: gainParameter('Gain', 'How far a bell or shelf boosts (+) or cuts (-).', -24, 24),
  q: {
    type: 'number',
    label: 'Q',
    unit: '',
    min: 0.1,
    max: 20,
    default: 1,
    scale: 'logarithmic',
    step: 0.01,
    digits: 2,
    help: 'Higher is narrower; 0.71 is the flattest pass filter and the smoothest shelf.',
  },
  slopeDbPerOctave: {
    type: 'choice',
    label: 'Slope',
    options: [6, 12, 18, 24, 36, 48].map((value) => ({ value, label: `${value} dB per octave` })),
    default: 12,
    help: 'How steeply a pass filter falls beyond its corner.',
  },
}
