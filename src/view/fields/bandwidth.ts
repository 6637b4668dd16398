/**
 * The Q of a bell whose bandwidth is so many octaves: sqrt(2^N) / (2^N - 1).
 * Source: R. Bristow-Johnson, "Cookbook formulae for audio equalizer biquad filter coefficients", where it reads
 * 1/Q = 2 sinh(ln(2)/2 N).
 */
export function qOfOctaves(octaves: number): number {
  return Math.sqrt(2 ** octaves) / (2 ** octaves - 1)
}
