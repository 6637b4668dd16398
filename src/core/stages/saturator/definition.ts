import { plain } from '../describe'
import { gainParameter, mixParameter } from '../shared-parameters'
import type { StageDefinition } from '../stage-definition'

/** Settings of the saturator. `bias` is the offset on the curve, `mix` 0 (dry) to 1. */
export interface SaturatorSettings {
  readonly driveDb: number
  readonly bias: number
  readonly mix: number
  readonly outputDb: number
}

/** The saturator. */
export const saturator: StageDefinition<SaturatorSettings> = {
  label: 'Saturator',
  purpose: 'Adds harmonics by bending loud parts of the wave.',
  parameters: {
    driveDb: {
      type: 'number',
      label: 'Drive',
      unit: 'dB',
      min: 0,
      max: 24,
      default: 6,
      scale: 'linear',
      step: 0.5,
      digits: 1,
      help: 'How far the wave is pushed into the bend of the curve.',
    },
    bias: {
      type: 'number',
      label: 'Bias',
      unit: '',
      min: -1,
      max: 1,
      default: 0,
      scale: 'linear',
      step: 0.01,
      digits: 2,
      help: 'At 0 only odd harmonics are added; away from 0 even ones too.',
    },
    mix: mixParameter('How much of the output is saturated; the rest is the input as it came.'),
    outputDb: gainParameter('Output', 'Level after the curve.', -24, 24),
  },
  reducesGain: false,
  magnitudeDb: null,
  describe: ({ driveDb, mix }) =>
    mix === 0 ? 'Adds nothing: mix 0 %' : `Bends the wave, driven ${plain(driveDb, 1)} dB`,
}
