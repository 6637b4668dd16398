/** Filters stay below this share of the sample rate: at 0.5 the bilinear transform has no finite answer. */
const HIGHEST_SHARE_OF_RATE = 0.49

/** `frequencyHz` brought below 0.49 of the sample rate, so that one chain serves every rate. */
export function limitedFrequencyHz(frequencyHz: number, sampleRate: number): number {
  return Math.min(frequencyHz, HIGHEST_SHARE_OF_RATE * sampleRate)
}
