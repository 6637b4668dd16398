/** Something took longer than it was given. */
export class TimeLimitError extends Error {
  override readonly name = 'TimeLimitError'

  constructor(what: string, limitMs: number) {
    super(`${what}: no answer in ${limitMs / 1000} s`)
  }
}

/**
 * What `work` comes to, if it does so in time; it is not stopped otherwise.
 * @throws TimeLimitError when it takes longer than `limitMs`
 */
export async function within<Result>(limitMs: number, what: string, work: Promise<Result>): Promise<Result> {
  let timer: NodeJS.Timeout | undefined
  const limit = new Promise<never>((_, reject) => {
    timer = setTimeout(() => reject(new TimeLimitError(what, limitMs)), limitMs)
  })
  // An answer that comes, or fails, after its time is of no interest.
  work.catch(() => undefined)
  return Promise.race([work, limit]).finally(() => clearTimeout(timer))
}

/**
 * Asks `look` again and again until `isDone` accepts its answer.
 * @returns the answer that was accepted, or null when none came within `limitMs`
 */
export async function until<Answer>(
  limitMs: number,
  look: () => Promise<Answer>,
  isDone: (answer: Answer) => boolean,
  everyMs = 150,
): Promise<Answer | null> {
  const end = performance.now() + limitMs
  for (;;) {
    const answer = await look()
    if (isDone(answer)) return answer
    if (performance.now() > end) return null
    await pause(everyMs)
  }
}

export function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms))
}
