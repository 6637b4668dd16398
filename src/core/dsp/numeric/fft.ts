import FFT from 'fft.js'

const SMALLEST = 4

/** Smallest power of two that is at least `length`, and at least 4. */
export function powerOfTwoFrom(length: number): number {
  let size = SMALLEST
  while (size < length) size *= 2
  return size
}

/**
 * Fourier transforms of one size, with their working memory; each call overwrites what the last one returned.
 * Bins are X[k] = sum over n of x[n] e^(-2 pi i k n / size), not divided by anything.
 */
export class FourierTransform {
  private readonly fft: FFT
  private readonly spectrum: Float64Array
  private readonly product: Float64Array
  private readonly pair: Float64Array
  private readonly squares: Float64Array

  /**
   * @param size samples in each transform, a power of two, at least 4
   * @throws RangeError for another size
   */
  constructor(readonly size: number) {
    if (powerOfTwoFrom(size) !== size) throw new RangeError(`FFT of ${size} (expected a power of two from 4)`)
    this.fft = new FFT(size)
    this.spectrum = new Float64Array(2 * size)
    this.product = new Float64Array(2 * size)
    this.pair = new Float64Array(2 * size)
    this.squares = new Float64Array(size / 2 + 1)
  }

  /** |X[k]|^2 for k = 0 .. size / 2 of `size` real samples. */
  powers(samples: Float64Array): Float64Array {
    const { spectrum, squares } = this
    this.fft.realTransform(spectrum, samples)
    for (let k = 0; k < squares.length; k++) {
      const re = spectrum[2 * k] ?? 0
      const im = spectrum[2 * k + 1] ?? 0
      squares[k] = re * re + im * im
    }
    return squares
  }

  /**
   * Circular cross-correlation of two real sequences of `size` samples: element 2 m is the sum over n of
   * a[n] b[n + m], n + m modulo `size`. (Elements between are the imaginary parts, 0 but for rounding.)
   *
   * Both go through one transform as the real and imaginary part of a complex sequence z:
   * A = (Z[k] + conj(Z[-k])) / 2 and B = (Z[k] - conj(Z[-k])) / 2i.
   */
  crossCorrelation(a: Float64Array, b: Float64Array): Float64Array {
    const { size, pair, spectrum, product } = this
    for (let n = 0; n < size; n++) {
      pair[2 * n] = a[n] ?? 0
      pair[2 * n + 1] = b[n] ?? 0
    }
    this.fft.transform(spectrum, pair)
    for (let k = 0; k < size; k++) {
      const mirrored = (size - k) % size
      const [re, im] = [spectrum[2 * k] ?? 0, spectrum[2 * k + 1] ?? 0]
      const [mirrorRe, mirrorIm] = [spectrum[2 * mirrored] ?? 0, -(spectrum[2 * mirrored + 1] ?? 0)]
      const [aRe, aIm] = [(re + mirrorRe) / 2, (im + mirrorIm) / 2]
      const [bRe, bIm] = [(im - mirrorIm) / 2, (mirrorRe - re) / 2]
      product[2 * k] = aRe * bRe + aIm * bIm
      product[2 * k + 1] = aRe * bIm - aIm * bRe
    }
    this.fft.inverseTransform(pair, product)
    return pair
  }
}

/**
 * Hann window of `length` points for spectra, in its periodic form: 0 at the first point and at the one after
 * the last, so that windows at half overlap add up to 1. Source: F. J. Harris, "On the Use of Windows for
 * Harmonic Analysis with the Discrete Fourier Transform", Proc. IEEE 66(1), 1978.
 */
export function hann(length: number): Float64Array {
  return Float64Array.from({ length }, (_, n) => Math.sin((Math.PI * n) / length) ** 2)
}
