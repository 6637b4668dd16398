/** Waits so long. */
export function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms))
}

/** Waits for `done`, or until `signal` says that it is not waited for. */
export async function orAborted(done: Promise<void>, signal: AbortSignal): Promise<void> {
  if (signal.aborted) return
  const aborted = new Promise<void>((resolve) =>
    signal.addEventListener('abort', () => resolve(), { once: true }),
  )
  await Promise.race([done, aborted])
}
