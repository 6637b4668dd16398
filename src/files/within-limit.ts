/**
 * What `work` gives, unless it takes too long or is given up first; work itself cannot be stopped and goes on unheard.
 *
 * @param limitMs most time it may take, ms
 * @param onLate makes the error that is thrown then
 * @param signal gives up at once; the promise is rejected with its reason
 */
export function withinLimit<Result>(
  work: Promise<Result>,
  limitMs: number,
  onLate: () => Error,
  signal?: AbortSignal,
): Promise<Result> {
  return new Promise((resolve, reject) => {
    const end = () => {
      clearTimeout(limit)
      signal?.removeEventListener('abort', giveUp)
    }
    const fail = (reason: unknown) => {
      end()
      reject(reason)
    }
    const giveUp = () => fail(signal?.reason)
    const limit = setTimeout(() => fail(onLate()), limitMs)
    signal?.addEventListener('abort', giveUp)
    if (signal?.aborted) giveUp()
    work.then((result) => {
      end()
      resolve(result)
    }, fail)
  })
}
