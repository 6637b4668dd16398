import { type KWeighting, kWeighting } from './k-weighting'

/** Below this sum of squares a filter's state is set to 0, long before it can become subnormal. */
const FLUSHED_ENERGY = 1e-40

/**
 * K-weighted energy of sound that comes in pieces: the sum of squares behind the filter of ITU-R BS.1770-5, Annex 1,
 * each channel with its weight (the inner sums of equations 1 and 2). Goes on where the last piece ended; `next`
 * allocates nothing.
 */
export class KWeightedEnergy {
  private readonly filter: KWeighting
  /** For each channel the state of both sections. */
  private readonly states: readonly Float64Array[]
  private readonly weights: Float64Array

  /**
   * @param sampleRate Hz, 8000 to 192000
   * @param channelWeights what the power of each channel counts
   * @throws MeasureError `sample-rate` outside that range
   */
  constructor(sampleRate: number, channelWeights: readonly number[]) {
    this.filter = kWeighting(sampleRate)
    this.states = channelWeights.map(() => new Float64Array(4))
    // The high-pass's numerator is scale * (1, -2, 1): the scale is taken out of the loop as an energy.
    const scale = this.filter.highPass.b0
    this.weights = Float64Array.from(channelWeights, (weight) => weight * scale * scale)
  }

  /** Energy of the next `count` frames of `channel`, which are in `samples` from `from` on. */
  next(channel: number, samples: Float32Array, from: number, count: number): number {
    const state = this.states[channel]
    if (!state) return 0
    const { b0, b1, b2, a1, a2 } = this.filter.shelf
    const { a1: c1, a2: c2 } = this.filter.highPass
    let s1 = state[0] ?? 0
    let s2 = state[1] ?? 0
    let t1 = state[2] ?? 0
    let t2 = state[3] ?? 0
    let energy = 0
    const end = from + count
    // Transposed direct form II, both sections in one pass.
    for (let n = from; n < end; n++) {
      const x = samples[n] ?? 0
      const shelved = b0 * x + s1
      s1 = b1 * x - a1 * shelved + s2
      s2 = b2 * x - a2 * shelved
      const weighted = shelved + t1
      t1 = t2 - 2 * shelved - c1 * weighted
      t2 = shelved - c2 * weighted
      energy += weighted * weighted
    }
    if (s1 * s1 + s2 * s2 < FLUSHED_ENERGY) s1 = s2 = 0
    if (t1 * t1 + t2 * t2 < FLUSHED_ENERGY) t1 = t2 = 0
    state[0] = s1
    state[1] = s2
    state[2] = t1
    state[3] = t2
    return (this.weights[channel] ?? 0) * energy
  }
}
