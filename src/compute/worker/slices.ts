/** How long work goes on before the worker looks what has arrived, ms. */
const SLICE_MS = 8

/**
 * Runs `steps` to the end, or to null once `goOn` says no. Messages are handled between slices of it.
 * @param onStep told what each step yields
 */
export async function inSlices<Step, Result>(
  steps: Generator<Step, Result, void>,
  goOn: () => boolean,
  onStep: (step: Step) => void,
): Promise<Result | null> {
  let sliceEnd = performance.now() + SLICE_MS
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    onStep(step.value)
    if (performance.now() < sliceEnd) continue
    await nextTask()
    if (!goOn()) return null
    sliceEnd = performance.now() + SLICE_MS
  }
}

/** Lets what has arrived be handled. A channel, because timers are held back when they nest. */
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
