import type { TriangularNoise } from '../../core/primitives'

/** Integer samples, and how many of them would not fit their word. */
export interface Quantised {
  readonly samples: Int32Array
  readonly clippedSamples: number
}

/**
 * Adding and taking away 1.5 * 2^52 rounds a double to a whole number, ties to even: at that size neighbouring
 * doubles are 1 apart, and IEEE 754 addition itself does the rounding.
 */
const TO_WHOLE = 1.5 * 2 ** 52

/** Frames for which dither is made at a time. */
const BLOCK_FRAMES = 4096

/**
 * Turns samples (full scale = 1) into signed integers of `bits` bits (full scale = 2^(bits-1)), rounded to the
 * nearest, ties to even (IEEE 754 roundTiesToEven: halving a take puts every odd sample on a tie, and rounding
 * those all one way would add an offset). What does not fit is clipped and counted; +1.0 is one step too large
 * and so counts. NaN becomes 0.
 *
 * With `dither`, triangular noise of two steps peak to peak is added first, which makes mean and power of the total
 * error independent of the signal: 0 and a quarter of a step squared (Lipshitz, Wannamaker, Vanderkooy, "Quantization
 * and Dither: A Theoretical Survey", JAES 40(5), 1992; Wannamaker, Lipshitz, Vanderkooy, Wright, "A Theory of
 * Non-Subtractive Dither", IEEE Trans. Signal Processing 48(2), 2000).
 */
export function quantise(samples: Float32Array, bits: number, dither?: TriangularNoise): Quantised {
  const fullScale = 2 ** (bits - 1)
  const highest = fullScale - 1
  const lowest = -fullScale
  const out = new Int32Array(samples.length)
  // Zeros where there is no dither: adding them changes nothing.
  const noise = new Float64Array(BLOCK_FRAMES)
  let clippedSamples = 0
  for (let from = 0; from < out.length; from += BLOCK_FRAMES) {
    dither?.fill(noise)
    const to = Math.min(from + BLOCK_FRAMES, out.length)
    for (let i = from; i < to; i++) {
      let step = (samples[i] ?? 0) * fullScale + (noise[i - from] ?? 0) + TO_WHOLE - TO_WHOLE
      if (step > highest) {
        step = highest
        clippedSamples++
      } else if (step < lowest) {
        step = lowest
        clippedSamples++
      }
      out[i] = step
    }
  }
  return { samples: out, clippedSamples }
}

/** Whether every sample is a whole step of `bits` bits, so that rounding changes none. */
export function isOnGrid(samples: Float32Array, bits: number): boolean {
  const fullScale = 2 ** (bits - 1)
  for (let i = 0; i < samples.length; i++) {
    if (!Number.isInteger((samples[i] ?? 0) * fullScale)) return false
  }
  return true
}
