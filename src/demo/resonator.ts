/** `y[n] = a x[n] + b y[n-1] + c y[n-2]`. */
export interface ResonatorCoefficients {
  readonly a: number
  readonly b: number
  readonly c: number
}

/**
 * A resonance of the vocal tract with gain 1 at 0 Hz.
 * D. H. Klatt, "Software for a cascade/parallel formant synthesizer", JASA 67(3), 1980, equations 1 and 2.
 * @param frequencyHz centre, 0 up to half of `sampleRate`
 * @param bandwidthHz width at -3 dB, above 0
 */
export function resonator(
  frequencyHz: number,
  bandwidthHz: number,
  sampleRate: number,
): ResonatorCoefficients {
  const radius = Math.exp((-Math.PI * bandwidthHz) / sampleRate)
  const c = -radius * radius
  const b = 2 * radius * Math.cos((2 * Math.PI * frequencyHz) / sampleRate)
  return { a: 1 - b - c, b, c }
}

/** A resonator with its memory, so that it can be reshaped while it rings. */
export class ResonatorFilter {
  private last = 0
  private beforeLast = 0

  /**
   * Runs frames `from` up to `to` of `samples` through the resonance, in place, while it changes from `start`
   * to `end` along a straight line. Steps instead would click: the coefficients between two stable resonators
   * are those of a stable one, because the region of stability is a triangle.
   */
  process(
    samples: Float64Array,
    from: number,
    to: number,
    start: ResonatorCoefficients,
    end: ResonatorCoefficients,
  ): void {
    const frames = Math.max(1, to - from)
    const stepA = (end.a - start.a) / frames
    const stepB = (end.b - start.b) / frames
    const stepC = (end.c - start.c) / frames
    let { a, b, c } = start
    let last = this.last
    let beforeLast = this.beforeLast
    for (let i = from; i < to; i += 1) {
      const next = a * (samples[i] ?? 0) + b * last + c * beforeLast
      beforeLast = last
      last = next
      samples[i] = next
      a += stepA
      b += stepB
      c += stepC
    }
    this.last = last
    this.beforeLast = beforeLast
  }
}

/** Runs all of `samples` through one fixed resonance, in place. */
export function resonate(
  samples: Float64Array,
  frequencyHz: number,
  bandwidthHz: number,
  sampleRate: number,
): void {
  const fixed = resonator(frequencyHz, bandwidthHz, sampleRate)
  new ResonatorFilter().process(samples, 0, samples.length, fixed, fixed)
}
