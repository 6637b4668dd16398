/** Work that can be left between any two steps: yields the share done (0 to 1), returns what it comes to. */
export type Steps<Result> = Generator<number, Result, void>

/** What work done in steps comes to, done in one go. */
export function finished<Result>(steps: Steps<Result>): Result {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

/** Steps that are the part of other work from share `from` to share `to`. */
export function* partOf<Result>(steps: Steps<Result>, from: number, to: number): Steps<Result> {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    yield from + (to - from) * step.value
  }
}
