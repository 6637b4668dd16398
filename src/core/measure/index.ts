export { MeasureError, type MeasureErrorCode } from './error'
export { type Pauses, pausesOf } from './levels/noise-floor'
export { SUB_BLOCKS_PER_SECOND, subBlockEnergySteps } from './loudness/block-energies'
export { integratedLoudness, integratedLoudnessOf } from './loudness/loudness'
export { type LoudnessOverTime, loudnessOverTime } from './loudness/loudness-over-time'
export { type MeasureKnown, type Measures, measure, measureSteps } from './measures'
export { type PitchFrame, type PitchOptions, pitchTrack } from './pitch/pitch'
export { type SungRange, sungRange } from './pitch/sung-range'
export {
  hasSibilantBand,
  type SibilantEvent,
  sibilantEventSteps,
  sibilantEvents,
} from './sibilance/sibilance'
export { sibilanceDb } from './sibilance/sibilance-level'
export { longTermSpectrum, type Spectrum, type SpectrumOptions } from './spectrum/spectrum'
