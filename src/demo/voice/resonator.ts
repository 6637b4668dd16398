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

/**
 * A resonance with an antiresonance in the same place, as a narrow cavity beside the tract makes them: Klatt 1980,
 * equations 1 to 4. Below and above it passes everything unchanged; where it stands, an antiresonance narrower than
 * the resonance takes out their ratio, and a wider one adds it.
 * @param frequencyHz where both stand
 * @param resonanceHz,antiresonanceHz how wide they are at -3 dB, above 0
 */
export function sideBranch(
  samples: Float64Array,
  frequencyHz: number,
  resonanceHz: number,
  antiresonanceHz: number,
  sampleRate: number,
): void {
  const pole = resonator(frequencyHz, resonanceHz, sampleRate)
  const zero = resonator(frequencyHz, antiresonanceHz, sampleRate)
  const scale = pole.a / zero.a
  let [input1, input2, output1, output2] = [0, 0, 0, 0]
  for (let i = 0; i < samples.length; i += 1) {
    const input = samples[i] ?? 0
    const output = scale * (input - zero.b * input1 - zero.c * input2) + pole.b * output1 + pole.c * output2
    input2 = input1
    input1 = input
    output2 = output1
    output1 = output
    samples[i] = output
  }
}
