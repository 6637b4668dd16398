import { magnitudeOfSectionsDb } from '../../dsp/filters/biquad'
import type { ListParameter } from '../parameter'
import type { StageDefinition } from '../stage-definition'
import { type BandSettings, bandParameters, type EqualiserSettings } from './band'
import { describeBands } from './band-words'
import { sectionsOf } from './sections'

/** The most bands one equaliser holds. */
export const MAX_BANDS = 12

const bandsParameter: ListParameter<BandSettings> = {
  type: 'list',
  label: 'Bands',
  itemLabel: 'Band',
  item: bandParameters,
  maxItems: MAX_BANDS,
  default: [{ on: true, shape: 'bell', frequencyHz: 1000, gainDb: 0, q: 1, slopeDbPerOctave: 12 }],
  help: 'Each band shapes one part of the spectrum; in dB, their responses add up.',
}

/** The equaliser. */
export const equaliser: StageDefinition<EqualiserSettings> = {
  label: 'Equaliser',
  purpose: 'Boosts and cuts parts of the spectrum.',
  parameters: {
    bands: bandsParameter,
    design: {
      type: 'choice',
      label: 'Design',
      options: [
        { value: 'matched', label: 'matched to analogue' },
        { value: 'bilinear', label: 'bilinear' },
      ],
      default: 'matched',
      rare: true,
      help: 'Matched keeps the analogue shape near the top of the range; bilinear squeezes it towards half the sample rate.',
    },
  },
  reducesGain: false,
  magnitudeDb: (settings, frequenciesHz, sampleRate) =>
    magnitudeOfSectionsDb(sectionsOf(settings, sampleRate), frequenciesHz, sampleRate),
  describe: ({ bands }) => describeBands(bands),
  latencyFrames: () => 0,
  idleSettings: null,
  picture: null,
  items: {
    parameter: bandsParameter,
    of: ({ bands }) => bands,
    switched: (settings, index, on) => ({
      ...settings,
      bands: settings.bands.map((band, i) => (i === index ? { ...band, on } : band)),
    }),
  },
  bands: {
    of: ({ bands }) => bands,
    replaced: (settings, bands) => ({ ...settings, bands }),
    design: ({ design }) => design,
  },
  detector: null,
  makeup: null,
}
