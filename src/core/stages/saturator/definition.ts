import { OVERSAMPLER_LATENCY_FRAMES } from '../../dsp/oversampling/rate'
import { saturationCurve } from '../../dsp/oversampling/saturation-curve'
import { dbToGain } from '../../sound/decibels'
import { plainInSentence } from '../number-format'
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
  purpose: 'Adds harmonics by rounding off the loud parts of the waveform.',
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
      help: 'Gain into the saturation curve: more drive, more harmonics.',
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
    mix: mixParameter('Share of the output that is saturated; the rest is the dry input.'),
    outputDb: gainParameter('Output', 'Gain after the curve.', -24, 24),
  },
  reducesGain: false,
  magnitudeDb: null,
  describe: ({ driveDb, mix }) =>
    mix === 0 ? 'Adds nothing: mix 0 %' : `Saturates with ${plainInSentence(driveDb, 1)} dB of drive`,
  latencyFrames: () => OVERSAMPLER_LATENCY_FRAMES,
  idleSettings: null,
  picture: ({ driveDb, bias }) => ({
    kind: 'transfer-curve',
    outputAt: (input) => saturationCurve(input, dbToGain(driveDb), bias),
    sentence: `Saturation curve with ${plainInSentence(driveDb, 1)} dB of drive: straight for quiet sound, bent for loud.`,
  }),
  items: null,
  bands: null,
  detector: null,
  makeup: null,
}
