/**
 * The core's second face: signal processing for whoever makes sound (the demo), hosts processors (the audio thread) or
 * writes samples (files). The page needs none of it, and stays lighter for that.
 */

export { DelayLine } from './dsp/fades/delay-line'
export { Ramp } from './dsp/fades/ramp'
export { bell, highPass, highShelf, lowPass } from './dsp/filters/bilinear'
export type { Biquad } from './dsp/filters/biquad'
export { BiquadCascade } from './dsp/filters/biquad-cascade'
export { between, type Random, seededRandom, TriangularNoise, whiteNoise } from './dsp/numeric/random'
export { powerToLufs } from './measure/loudness/gating'
export { KWeightedEnergy } from './measure/loudness/k-weighted-energy'
