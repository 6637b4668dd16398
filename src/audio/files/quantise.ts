/** Numbers in [0, 1), uniformly distributed. */
export type RandomSource = () => number

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

/**
 * Turns samples (full scale = 1) into signed integers of `bits` bits (full scale = 2^(bits-1)), rounded to the
 * nearest, ties to even (IEEE 754 roundTiesToEven: halving a take puts every odd sample on a tie, and rounding
 * those all one way would add an offset). What does not fit is clipped and counted; +1.0 is one step too large
 * and so counts. NaN becomes 0.
 *
 * With `random`, triangular dither of two steps peak to peak is added first: the sum of two independent uniform
 * draws, which makes mean and power of the error independent of the signal (Wannamaker, Lipshitz, Vanderkooy,
 * Wright, "A Theory of Non-Subtractive Dither", IEEE Trans. Signal Processing 48(2), 2000).
 */
export function quantise(samples: Float32Array, bits: number, random?: RandomSource): Quantised {
  const fullScale = 2 ** (bits - 1)
  const highest = fullScale - 1
  const lowest = -fullScale
  const out = new Int32Array(samples.length)
  let clippedSamples = 0
  for (let i = 0; i < out.length; i++) {
    const dither = random ? random() + random() - 1 : 0
    let step = (samples[i] ?? 0) * fullScale + dither + TO_WHOLE - TO_WHOLE
    if (step > highest) {
      step = highest
      clippedSamples++
    } else if (step < lowest) {
      step = lowest
      clippedSamples++
    }
    out[i] = step
  }
  return { samples: out, clippedSamples }
}
