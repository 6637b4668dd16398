/** Lets what has arrived be handled. A channel, because nested timers are delayed. */
export function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      port1.close()
      resolve()
    }
    port2.postMessage(null)
  })
}

/** How long work goes on before what has arrived is looked at, ms. */
export const SLICE_MS = 8

/** Runs `steps` to the end, or to null once `isWanted` says no; what has arrived is handled in between. */
export async function inSlices<Step, Result>(
  steps: Generator<Step, Result, void>,
  isWanted: () => boolean,
): Promise<Result | null> {
  let sliceEnd = performance.now() + SLICE_MS
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    if (performance.now() < sliceEnd) continue
    await nextTask()
    if (!isWanted()) return null
    sliceEnd = performance.now() + SLICE_MS
  }
}
