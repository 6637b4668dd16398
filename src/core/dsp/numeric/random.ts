/** A repeatable source of numbers in [0, 1). */
export type Random = () => number

const increment = 0x6d2b79f5

/** The number in [0, 1) that belongs to a state of the generator. */
function output(state: number): number {
  let mixed = Math.imul(state ^ (state >>> 15), 1 | state)
  mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed
  return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296
}

/**
 * Repeatable random numbers in [0, 1) from a 32-bit seed: the public-domain generator known as mulberry32.
 * Two generators of one seed give the same numbers in every engine (integer arithmetic only).
 */
export function seededRandom(seed: number): Random {
  let state = seed | 0
  return () => {
    state = (state + increment) | 0
    return output(state)
  }
}

/** A random number from the first of two up to the second. */
export function between(random: Random, [from, to]: readonly [number, number]): number {
  return from + (to - from) * random()
}

/**
 * `frames` samples of white noise with mean 0 and mean square 1 (uniform, so never beyond +-sqrt 3), from the
 * numbers of {@link seededRandom}. The state is a local here: in a closure it would cost an allocation a frame.
 */
export function whiteNoise(frames: number, seed: number): Float64Array {
  const noise = new Float64Array(frames)
  const peak = Math.sqrt(3)
  let state = seed | 0
  for (let i = 0; i < frames; i += 1) {
    state = (state + increment) | 0
    noise[i] = (2 * output(state) - 1) * peak
  }
  return noise
}

/**
 * Triangular noise from -1 to 1, mean 0 and mean square 1/6: the sum of two independent uniform draws, from the numbers
 * of {@link seededRandom}. It goes on from one block to the next.
 */
export class TriangularNoise {
  private state: number

  constructor(seed: number) {
    this.state = seed | 0
  }

  /** Fills `noise` with the next numbers. */
  fill(noise: Float64Array): void {
    let state = this.state
    for (let i = 0; i < noise.length; i += 1) {
      const first = (state + increment) | 0
      state = (first + increment) | 0
      noise[i] = output(first) + output(state) - 1
    }
    this.state = state
  }
}
