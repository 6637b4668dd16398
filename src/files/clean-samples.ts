/**
 * Largest sample taken for sound, linear: +60 dBFS. No recording comes near it; what lies above is damage, or
 * integers passed off as floats. (No source: our own limit.)
 */
export const LARGEST_SAMPLE = 1000

/**
 * Replaces with 0, in place, every sample that is NaN, infinite or larger than {@link LARGEST_SAMPLE}: one of them
 * would run through every recursive filter to the end of the take.
 * @returns how many samples were replaced, over all channels
 */
export function replaceBadSamples(channels: readonly Float32Array[]): number {
  let replaced = 0
  for (const samples of channels) {
    for (let i = 0; i < samples.length; i++) {
      // Written so that NaN, which fails every comparison, is caught as well.
      if (!(Math.abs(samples[i] ?? 0) <= LARGEST_SAMPLE)) {
        samples[i] = 0
        replaced++
      }
    }
  }
  return replaced
}
