import { framesOf } from '../../dsp/dynamics/time-constant'
import { plainInSentence, ratioText, signedInSentence } from '../number-format'
import { defaultSettings } from '../parameter-defaults'
import {
  attackParameter,
  gainParameter,
  kneeParameter,
  lookaheadParameter,
  mixParameter,
  ratioParameter,
  releaseParameter,
  thresholdParameter,
} from '../shared-parameters'
import type { StageDefinition } from '../stage-definition'

/** Window of the RMS detector: whole periods of every multiple of 100 Hz, so that low notes read steadily. */
export const RMS_WINDOW_MS = 10

/** Settings of a compressor's level detector. */
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

const threshold = thresholdParameter(-24, 'Levels above this are compressed.')
const knee = kneeParameter(6)

/** Makeup gain, dB. */
const makeupParameter = gainParameter('Makeup gain', 'Gain that makes up for the reduction.', -12, 36)

/** The compressor. */
export const compressor: StageDefinition<CompressorSettings> = {
  label: 'Compressor',
  purpose: 'Evens out the level by turning loud notes down.',
  parameters: {
    thresholdDb: threshold,
    ratio: ratioParameter(
      4,
      'How many dB the input must rise above the threshold for 1 dB more at the output.',
    ),
    kneeDb: knee,
    attackMs: attackParameter(5),
    releaseMs: releaseParameter(80),
    lookaheadMs: lookaheadParameter,
    detector: {
      type: 'choice',
      label: 'Detector',
      options: [
        { value: 'peak', label: 'peak' },
        { value: 'rms', label: `RMS (${RMS_WINDOW_MS} ms)` },
      ],
      default: 'peak',
      rare: true,
      help: `Peak follows every cycle; RMS follows the power over ${RMS_WINDOW_MS} ms, nearer to how loud it sounds.`,
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
      rare: true,
      help: 'Keeps lower frequencies from triggering the compressor; the voice itself is not filtered.',
    },
    mix: mixParameter('Share of the output that is compressed; the rest is the dry input.'),
    makeupDb: makeupParameter,
  },
  reducesGain: true,
  magnitudeDb: null,
  describe: describeCompressor,
  latencyFrames: ({ lookaheadMs }, sampleRate, maxLookaheadMs = lookaheadMs) =>
    framesOf(maxLookaheadMs, sampleRate),
  idleSettings: null,
  picture: (settings) => ({ kind: 'static-curve', curve: settings }),
  items: null,
  bands: null,
  detector: {
    threshold: { key: 'thresholdDb', parameter: threshold },
    knee: { key: 'kneeDb', parameter: knee },
    crossover: null,
    curve: (settings) => settings,
    // Lookahead moves the sound against the level, not the level.
    levelSettings: ({ detector, sideChainHighPassHz }) => ({
      ...defaultSettings(compressor.parameters),
      detector,
      sideChainHighPassHz,
    }),
  },
  makeup: {
    key: 'makeupDb',
    parameter: makeupParameter,
    share: ({ mix }) => mix,
    replaced: (settings, makeupDb) => ({ ...settings, makeupDb }),
  },
}

/** "Compresses 4:1 above −19 dBFS, +5 dB makeup". */
function describeCompressor({ thresholdDb, ratio, makeupDb, mix }: CompressorSettings): string {
  if (mix === 0) return 'Changes nothing: mix 0 %'
  const makeup = makeupDb === 0 ? '' : `, ${signedInSentence(makeupDb, 1)} dB makeup`
  if (ratio === 1) return `No compression: ratio 1:1${makeup}`
  const threshold = `above ${plainInSentence(thresholdDb, 1)} dBFS`
  return Number.isFinite(ratio)
    ? `Compresses ${ratioText(ratio)} ${threshold}${makeup}`
    : `Limits ${threshold}${makeup}`
}
