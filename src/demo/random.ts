/** A repeatable source of numbers in [0, 1). */
export type Random = () => number

/**
 * Repeatable random numbers in [0, 1) from a 32-bit seed: the public-domain generator known as mulberry32.
 * Two generators of one seed give the same numbers in every engine (integer arithmetic only).
 */
export function seededRandom(seed: number): Random {
  let state = seed | 0
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
  }
}

/** `frames` samples of white noise with mean 0 and mean square 1 (uniform, so never beyond +-sqrt 3). */
export function whiteNoise(frames: number, random: Random): Float64Array {
  const noise = new Float64Array(frames)
  const peak = Math.sqrt(3)
  for (let i = 0; i < frames; i += 1) noise[i] = (2 * random() - 1) * peak
  return noise
}
