/**
 * Hann window of `length` points for spectra, in its periodic form: 0 at the first point and at the one after
 * the last, so that windows at half overlap add up to 1. Source: F. J. Harris, "On the Use of Windows for
 * Harmonic Analysis with the Discrete Fourier Transform", Proc. IEEE 66(1), 1978.
 */
export function hann(length: number): Float64Array {
  return Float64Array.from({ length }, (_, n) => Math.sin((Math.PI * n) / length) ** 2)
}
