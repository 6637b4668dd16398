import { frequency, plain } from '../describe'
import {
  attackParameter,
  kneeParameter,
  ratioParameter,
  releaseParameter,
  thresholdParameter,
} from '../shared-parameters'
import type { StageDefinition } from '../stage-definition'

/** Settings of the de-esser. `band` says what is turned down: what lies above the crossover, or everything. */
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

/** The de-esser. Defaults are common practice, no source. */
export const deEsser: StageDefinition<DeEsserSettings> = {
  label: 'De-esser',
  purpose: 'Holds back S and T where they stick out.',
  parameters: {
    crossoverHz: {
      type: 'number',
      label: 'Crossover',
      unit: 'Hz',
      min: 1000,
      max: 12000,
      default: 4000,
      scale: 'logarithmic',
      step: 0.005,
      digits: 0,
      help: 'What lies above this is listened to, and held back.',
    },
    thresholdDb: thresholdParameter(-30, 'Levels above the crossover that pass this are held back.'),
    ratio: ratioParameter(20, 'How many dB the sibilance must rise for 1 dB more at the output.'),
    kneeDb: kneeParameter(0),
    attackMs: attackParameter(0.02),
    releaseMs: releaseParameter(20),
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
      help: 'The most that is ever taken away.',
    },
    band: {
      type: 'choice',
      label: 'Turns down',
      options: [
        { value: 'above', label: 'above the crossover' },
        { value: 'all', label: 'everything' },
      ],
      default: 'above',
      help: 'Only the band above, which leaves the voice in place, or the whole sound for as long as the S lasts.',
    },
  },
  reducesGain: true,
  magnitudeDb: null,
  describe: describeDeEsser,
}

/** "Turns S and T above 4.5 kHz down past −30.0 dBFS, by 10.0 dB at most". */
function describeDeEsser({ crossoverHz, thresholdDb, ratio, rangeDb, band }: DeEsserSettings): string {
  if (rangeDb === 0) return 'Turns nothing down: range 0 dB'
  if (ratio === 1) return 'Turns nothing down: ratio 1:1'
  const sibilants = `S and T above ${frequency(crossoverHz)}`
  const limits = `${plain(thresholdDb, 1)} dBFS, by ${plain(rangeDb, 1)} dB at most`
  return band === 'above'
    ? `Turns ${sibilants} down past ${limits}`
    : `Turns everything down where ${sibilants} pass ${limits}`
}
