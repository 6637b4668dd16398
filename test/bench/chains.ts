import { type BandSettings, chainOf, defaultStage } from '../../src/core'

/** Settings of one band of the five-section equaliser, ours and the native nodes' alike. */
export const FIVE_BANDS: readonly BandSettings[] = [
  { on: true, shape: 'high-pass', frequencyHz: 170, gainDb: 0, q: Math.SQRT1_2, slopeDbPerOctave: 12 },
  { on: true, shape: 'bell', frequencyHz: 300, gainDb: -3, q: 1.2, slopeDbPerOctave: 12 },
  { on: true, shape: 'bell', frequencyHz: 1200, gainDb: 2, q: 1, slopeDbPerOctave: 12 },
  { on: true, shape: 'bell', frequencyHz: 3000, gainDb: 4, q: 1, slopeDbPerOctave: 12 },
  { on: true, shape: 'high-shelf', frequencyHz: 8000, gainDb: 4, q: Math.SQRT1_2, slopeDbPerOctave: 12 },
]

const equaliser = defaultStage('equaliser')

export const FIVE_SECTION_CHAIN = chainOf([
  { ...equaliser, settings: { bands: FIVE_BANDS, design: 'bilinear' } },
])

/** The settings under which the native compressor node does about the same work. */
const compressor = defaultStage('compressor')
export const COMPRESSOR_CHAIN = chainOf([
  {
    ...compressor,
    settings: { ...compressor.settings, thresholdDb: -24, ratio: 12, attackMs: 3, releaseMs: 250 },
  },
])

/** Settings that the native graphs share. */
export const CROSSOVER_HZ = 4000
export const DRIVE_DB = 6
export const GAIN_DB = -6

const deEsser = defaultStage('de-esser')
export const DE_ESSER_CHAIN = chainOf([
  { ...deEsser, settings: { ...deEsser.settings, crossoverHz: CROSSOVER_HZ, thresholdDb: -30, ratio: 20 } },
])

const saturator = defaultStage('saturator')
export const SATURATOR_CHAIN = chainOf([
  { ...saturator, settings: { ...saturator.settings, driveDb: DRIVE_DB } },
])

export const GAIN_CHAIN = chainOf([{ ...defaultStage('gain'), settings: { gainDb: GAIN_DB } }])
