/** Runs that are thrown away while the engine warms up, and runs of which the median counts. */
const WARM_UPS = 2
const RUNS = 7

/** Median time of `work` in milliseconds. */
export async function medianMs(work: () => unknown): Promise<number> {
  for (let i = 0; i < WARM_UPS; i++) await work()
  const times: number[] = []
  for (let i = 0; i < RUNS; i++) {
    const start = performance.now()
    await work()
    times.push(performance.now() - start)
  }
  return times.sort((a, b) => a - b)[RUNS >> 1] ?? Number.NaN
}

/** Median times of two pieces of work, run by turns so that a busy machine slows both alike. */
export async function medianPair(ours: () => unknown, reference: () => unknown): Promise<[number, number]> {
  for (let i = 0; i < WARM_UPS; i++) {
    await ours()
    await reference()
  }
  const times: [number[], number[]] = [[], []]
  for (let i = 0; i < RUNS; i++) {
    for (const [index, work] of [ours, reference].entries()) {
      const start = performance.now()
      await work()
      times[index]?.push(performance.now() - start)
    }
  }
  const median = (values: number[]) => values.sort((a, b) => a - b)[RUNS >> 1] ?? Number.NaN
  return [median(times[0]), median(times[1])]
}
