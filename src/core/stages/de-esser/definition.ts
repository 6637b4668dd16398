import { frequency, plainInSentence } from '../number-format'
import type { NumberParameter } from '../parameter'
import { defaultSettings } from '../parameter-defaults'
import {
  attackParameter,
  kneeParameter,
  ratioParameter,
  releaseParameter,
  thresholdParameter,
} from '../shared-parameters'
import type { StageDefinition } from '../stage-definition'

/** Settings of the de-esser. `band` says what is reduced: what lies above the crossover (split band) or everything (full band). */
export interface DeEsserSettings {
  readonly crossoverHz: number
  readonly thresholdDb: number
  readonly ratio: number
  readonly kneeDb: number
  readonly attackMs: number
  readonly releaseMs: number
  readonly rangeDb: number
  readonly band: 'above' | 'all'
}

const crossover: NumberParameter = {
  type: 'number',
  label: 'Crossover',
  unit: 'Hz',
  min: 1000,
  max: 12000,
  default: 4000,
  scale: 'logarithmic',
  step: 0.005,
  digits: 0,
  help: 'Sibilance is detected above this frequency, and reduced there.',
}
const threshold = thresholdParameter(-30, 'Levels above the crossover are reduced where they exceed this.')
const knee: NumberParameter = { ...kneeParameter(0), rare: true }

/** The de-esser. Defaults are common practice, no source. */
export const deEsser: StageDefinition<DeEsserSettings> = {
  label: 'De-esser',
  purpose: 'Reduces sibilance, such as S and T, where it sticks out.',
  parameters: {
    crossoverHz: crossover,
    thresholdDb: threshold,
    ratio: ratioParameter(20, 'How many dB the sibilance must rise for 1 dB more at the output.'),
    kneeDb: knee,
    attackMs: { ...attackParameter(0.02), rare: true },
    releaseMs: { ...releaseParameter(20), rare: true },
    rangeDb: {
      type: 'number',
      label: 'Range',
      unit: 'dB',
      min: 0,
      max: 60,
      default: 12,
      scale: 'linear',
      step: 0.5,
      digits: 1,
      help: 'The most that it ever reduces by.',
    },
    band: {
      type: 'choice',
      label: 'Mode',
      options: [
        { value: 'above', label: 'split band' },
        { value: 'all', label: 'full band' },
      ],
      default: 'above',
      help: 'Split band reduces what is above the crossover and leaves the rest alone; full band reduces everything while the S lasts.',
    },
  },
  reducesGain: true,
  magnitudeDb: null,
  describe: describeDeEsser,
  latencyFrames: () => 0,
  // The crossover turns the phase of everything, also where nothing is reduced.
  idleSettings: (settings) => ({ ...settings, rangeDb: 0 }),
  picture: (settings) => ({ kind: 'sibilance', detection: settings }),
  items: null,
  bands: null,
  detector: {
    threshold: { key: 'thresholdDb', parameter: threshold },
    knee: { key: 'kneeDb', parameter: knee },
    crossover: { key: 'crossoverHz', parameter: crossover },
    curve: (settings) => settings,
    levelSettings: ({ crossoverHz }) => ({ ...defaultSettings(deEsser.parameters), crossoverHz }),
  },
  makeup: null,
}

/** "Reduces sibilance above 4.5 kHz, by up to 10 dB". */
function describeDeEsser({ crossoverHz, ratio, rangeDb, band }: DeEsserSettings): string {
  if (rangeDb === 0) return 'Reduces nothing: range 0 dB'
  if (ratio === 1) return 'Reduces nothing: ratio 1:1'
  const reduced = band === 'above' ? 'sibilance' : 'everything during sibilance'
  return `Reduces ${reduced} above ${frequency(crossoverHz)}, by up to ${plainInSentence(rangeDb, 1)} dB`
}
