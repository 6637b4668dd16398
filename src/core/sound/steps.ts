/** What work done in steps comes to, done in one go. */
export function finished<Result>(steps: Generator<number, Result, void>): Result {
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}
