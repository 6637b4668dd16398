import type { StageDefinition } from '../stage-definition'
import { bandParameters, type EqualiserSettings } from './band'
import { describeBands } from './band-words'
import { magnitudeOfSectionsDb, sectionsOf } from './sections'

/** The most bands one equaliser holds. */
export const MAX_BANDS = 12

/** The equaliser. */
export const equaliser: StageDefinition<EqualiserSettings> = {
  label: 'Equaliser',
  purpose: 'Turns parts of the spectrum up or down.',
  parameters: {
    bands: {
      type: 'list',
      label: 'Bands',
      itemLabel: 'Band',
      item: bandParameters,
      maxItems: MAX_BANDS,
      default: [{ on: true, shape: 'bell', frequencyHz: 1000, gainDb: 0, q: 1, slopeDbPerOctave: 12 }],
      help: 'Each band shapes one part of the spectrum; together they add up in dB.',
    },
    design: {
      type: 'choice',
      label: 'Design',
      options: [
        { value: 'matched', label: 'matched to analogue' },
        { value: 'bilinear', label: 'bilinear' },
      ],
      default: 'matched',
      help: 'Matched keeps the analogue shape near the top of the range; bilinear squeezes it against half the sample rate.',
    },
  },
  reducesGain: false,
  magnitudeDb: (settings, frequenciesHz, sampleRate) =>
    magnitudeOfSectionsDb(sectionsOf(settings, sampleRate), frequenciesHz, sampleRate),
  describe: ({ bands }) => describeBands(bands),
}
