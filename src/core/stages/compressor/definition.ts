import { plain, ratioText } from '../describe'
import {
  attackParameter,
  gainParameter,
  kneeParameter,
  mixParameter,
  ratioParameter,
  releaseParameter,
  thresholdParameter,
} from '../shared-parameters'
import type { StageDefinition } from '../stage-definition'

/** Window of the RMS detector: whole periods of every multiple of 100 Hz, so that low notes read steadily. */
export const RMS_WINDOW_MS = 10

/** What a compressor's level is detected by. */
export interface DetectorSettings {
  readonly lookaheadMs: number
  readonly detector: 'peak' | 'rms'
  readonly sideChainHighPassHz: number
}

/** Settings of the compressor. Levels and gains in dB, times in ms, mix 0 (dry) to 1 (compressed). */
export interface CompressorSettings extends DetectorSettings {
  readonly thresholdDb: number
  readonly ratio: number
  readonly kneeDb: number
  readonly attackMs: number
  readonly releaseMs: number
  readonly makeupDb: number
  readonly mix: number
}

/** Makeup gain, dB. */
export const makeupParameter = gainParameter('Makeup gain', 'Level given back after the reduction.', -12, 36)

/** The compressor. */
export const compressor: StageDefinition<CompressorSettings> = {
  label: 'Compressor',
  purpose: 'Holds loud notes back, so that the voice keeps an even level.',
  parameters: {
    thresholdDb: thresholdParameter(-24, 'Levels above this are held back.'),
    ratio: ratioParameter(
      4,
      'How many dB the input must rise above the threshold for 1 dB more at the output.',
    ),
    kneeDb: kneeParameter(6),
    attackMs: attackParameter(5),
    releaseMs: releaseParameter(80),
    lookaheadMs: {
      type: 'number',
      label: 'Lookahead',
      unit: 'ms',
      min: 0,
      max: 10,
      default: 0,
      scale: 'linear',
      step: 0.1,
      digits: 1,
      minMeans: 'off',
      help: 'How far ahead the level is read, so that the gain is down before a peak arrives.',
    },
    detector: {
      type: 'choice',
      label: 'Level read as',
      options: [
        { value: 'peak', label: 'peak' },
        { value: 'rms', label: `RMS over ${RMS_WINDOW_MS} ms` },
      ],
      default: 'peak',
      help: 'Peak answers to every cycle; RMS to the power over 10 ms, nearer to how loud it sounds.',
    },
    sideChainHighPassHz: {
      type: 'number',
      label: 'Side-chain high-pass',
      unit: 'Hz',
      min: 0,
      max: 500,
      default: 0,
      scale: 'linear',
      step: 5,
      digits: 0,
      minMeans: 'off',
      help: 'Keeps sound below this from working the compressor; the voice itself is not filtered.',
    },
    makeupDb: makeupParameter,
    mix: mixParameter('How much of the output is compressed; the rest is the input as it came.'),
  },
  reducesGain: true,
  magnitudeDb: null,
  describe: describeCompressor,
}

/** "Turns down what is above −19.0 dBFS, 4:1, then all up 5.0 dB". */
function describeCompressor({ thresholdDb, ratio, makeupDb, mix }: CompressorSettings): string {
  if (mix === 0) return 'Changes nothing: mix 0 %'
  const after =
    makeupDb === 0 ? '' : `, then all ${makeupDb > 0 ? 'up' : 'down'} ${plain(Math.abs(makeupDb), 1)} dB`
  if (ratio === 1) return `Turns nothing down: ratio 1:1${after}`
  const threshold = `${plain(thresholdDb, 1)} dBFS`
  return Number.isFinite(ratio)
    ? `Turns down what is above ${threshold}, ${ratioText(ratio)}${after}`
    : `Lets nothing past ${threshold}${after}`
}
