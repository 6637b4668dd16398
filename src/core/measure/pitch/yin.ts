import { FourierTransform, powerOfTwoFrom } from '../../dsp/numeric/fft'

/** The lag at which a stretch of sound repeats itself best. */
export interface Period {
  /** Frames, with a fraction. */
  readonly lag: number
  /** The cumulative mean normalised difference there: 0 repeats exactly, about 1 not at all. */
  readonly aperiodicity: number
}

/** Dips this close to the deepest are not told apart. */
const AS_DEEP = 0.05

/**
 * Period estimates by YIN: A. de Cheveigne, H. Kawahara, "YIN, a fundamental frequency estimator for speech
 * and music", J. Acoust. Soc. Am. 111(4), 2002, steps 1 to 5. Holds its working memory; use one at a time.
 */
export class Yin {
  /** Frames of the stretch that `analyse` looks at: the window and the longest lag behind it. */
  readonly span: number
  private readonly fft: FourierTransform
  private readonly head: Float64Array
  private readonly whole: Float64Array
  private readonly difference: Float64Array
  private readonly normalised: Float64Array

  /**
   * @param windowFrames frames compared with their later selves
   * @param longestLag longest lag looked at, frames, at least 2
   */
  constructor(
    private readonly windowFrames: number,
    private readonly longestLag: number,
  ) {
    // One lag beyond the longest, so that a dip at the longest can be seen to be one.
    this.span = windowFrames + longestLag + 1
    this.fft = new FourierTransform(powerOfTwoFrom(this.span))
    this.head = new Float64Array(this.fft.size)
    this.whole = new Float64Array(this.fft.size)
    this.difference = new Float64Array(longestLag + 2)
    this.normalised = new Float64Array(longestLag + 2)
  }

  /** Looks at the first `span` frames of `samples`. Returns their mean square. */
  analyse(samples: Float32Array): number {
    const { head, whole, windowFrames, span } = this
    for (let i = 0; i < span; i++) {
      const x = samples[i] ?? 0
      whole[i] = x
      if (i < windowFrames) head[i] = x
    }
    this.computeDifference()
    this.normalise()
    let squares = 0
    for (let i = 0; i < span; i++) squares += (whole[i] ?? 0) ** 2
    return squares / span
  }

  /**
   * The period between two lags: the first dip below `threshold` (step 4). Where nothing goes that deep the paper
   * takes the deepest point of all; in noise that is any multiple of the period, so here it is the first dip
   * about as deep (a departure of our own, by {@link AS_DEEP}).
   */
  period(threshold: number, fromLag: number, toLag: number): Period {
    const { normalised } = this
    const first = Math.max(2, fromLag)
    const last = Math.min(toLag, this.longestLag)
    let deepest = Number.POSITIVE_INFINITY
    for (let lag = first; lag <= last; lag++) deepest = Math.min(deepest, normalised[lag] ?? 1)
    const enough = Math.max(threshold, deepest + AS_DEEP)
    let best = first
    for (let lag = first; lag <= last; lag++) {
      if ((normalised[lag] ?? 1) < (normalised[best] ?? 1)) best = lag
      if ((normalised[best] ?? 1) < enough && (normalised[lag + 1] ?? 1) >= (normalised[lag] ?? 1)) break
    }
    return { lag: this.refined(best), aperiodicity: normalised[best] ?? 1 }
  }

  /** d(lag) of equation 6, from energies and one cross-correlation. */
  private computeDifference(): void {
    const { whole, difference, windowFrames } = this
    const correlation = this.fft.crossCorrelation(this.head, whole)
    let energy = 0
    for (let i = 0; i < windowFrames; i++) energy += (whole[i] ?? 0) ** 2
    const headEnergy = energy
    for (let lag = 0; lag < difference.length; lag++) {
      difference[lag] = Math.max(0, headEnergy + energy - 2 * (correlation[2 * lag] ?? 0))
      energy += (whole[lag + windowFrames] ?? 0) ** 2 - (whole[lag] ?? 0) ** 2
    }
  }

  /** d'(lag) of equation 8: d over its mean at all shorter lags, 1 at lag 0 and where all is silent. */
  private normalise(): void {
    const { difference, normalised } = this
    let sum = 0
    normalised[0] = 1
    for (let lag = 1; lag < difference.length; lag++) {
      const value = difference[lag] ?? 0
      sum += value
      normalised[lag] = sum > 0 ? (value * lag) / sum : 1
    }
  }

  /** The bottom of the parabola through d at a lag and its neighbours (step 5). */
  private refined(lag: number): number {
    const [before, here, after] = [lag - 1, lag, lag + 1].map((at) => this.difference[at] ?? 0)
    if (before === undefined || here === undefined || after === undefined) return lag
    const curvature = before - 2 * here + after
    if (!(curvature > 0)) return lag
    const shift = (before - after) / (2 * curvature)
    return Math.abs(shift) <= 1 ? lag + shift : lag
  }
}
