export { MeasureError, type MeasureErrorCode } from './error'
export { clippedRangeSteps, clippedRanges } from './levels/clipped-ranges'
export { type Levels, levelSteps, levels } from './levels/levels'
export {
  noiseFloorDbfs,
  noiseFloorSteps,
  type Pauses,
  pausesOf,
  pausesSteps,
  pausesWithin,
} from './levels/noise-floor'
export { samplesOverSteps } from './levels/samples-over'
export { SUB_BLOCKS_PER_SECOND, subBlockEnergies, subBlockEnergySteps } from './loudness/block-energies'
export {
  integratedLoudness,
  integratedLoudnessOf,
  integratedLoudnessSteps,
  type Loudness,
  loudness,
  loudnessSteps,
} from './loudness/loudness'
export { type LoudnessOverTime, loudnessOverTime, loudnessOverTimeSteps } from './loudness/loudness-over-time'
export { type MeasureKnown, type Measures, measure, measureSteps } from './measures'
export {
  type PeakLevel,
  type PeakPyramid,
  peakLevelFor,
  peakPyramid,
  peakPyramidSteps,
} from './peaks/peak-pyramid'
export { type PitchFrame, type PitchOptions, pitchSteps, pitchTrack } from './pitch/pitch'
export { type SungRange, sungRange } from './pitch/sung-range'
export {
  hasSibilantBand,
  type SibilantEvent,
  sibilantEventSteps,
  sibilantEvents,
  sibilantsWithin,
} from './sibilance/sibilance'
export { sibilanceDb, sibilanceSteps } from './sibilance/sibilance-level'
export {
  SPECTROGRAM_LOWEST_HZ,
  SPECTROGRAM_ROWS,
  type SpectrogramColumns,
  spectrogram,
  spectrogramDb,
  spectrogramHighestHz,
  spectrogramSteps,
} from './spectrum/spectrogram'
export {
  coarserTile,
  type SpectrogramTile,
  TILE_COLUMNS,
  tileHopFor,
  tileRange,
  tilesIn,
} from './spectrum/spectrogram-tiles'
export {
  longTermSpectrum,
  longTermSpectrumSteps,
  type Spectrum,
  type SpectrumOptions,
} from './spectrum/spectrum'
