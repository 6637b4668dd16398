/**
 * Work that can be left between any two of its steps: yields the part done, 0 to 1, after each, and returns its result.
 * Whoever wants no more of it just drops it: it holds nothing that must be released. What it reads must stay the same
 * until it has ended.
 */
export type Steps<Result> = Generator<number, Result, void>

/**
 * Frames of one channel that a step of a measure reads at most: well below a millisecond's work for the cheapest of
 * them, about two for the most expensive. Measured, no source.
 */
export const STEP_FRAMES = 2 ** 15

/** The result of `steps`, all of them taken in one go. */
export function finished<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** `steps` as one part of something longer: what they yield is mapped from 0 .. 1 to `from` .. `to`. */
export function* partOf<Result>(steps: Steps<Result>, from: number, to: number): Steps<Result> {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    yield from + (to - from) * step.value
  }
}
