export { MeasureError, type MeasureErrorCode } from './error'
export { integratedLoudness } from './loudness'
export { type LoudnessOverTime, loudnessOverTime } from './loudness-over-time'
export { type Measures, measure } from './measures'
