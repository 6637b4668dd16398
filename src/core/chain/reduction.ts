import type { Trace } from './trace'

/** How much a stage held back along a take, dB (0 or more). */
export interface ReductionSummary {
  readonly mostDb: number
  /** Median over the time in which it held back at all. */
  readonly typicalDb: number
}

/** Below this a stage counts as not holding back, dB. */
const IDLE_DB = 0.1

/** The largest and the usual gain reduction of a trace. */
export function reductionSummary({ gainDb }: Trace): ReductionSummary {
  const working = gainDb.filter((gain) => gain < -IDLE_DB).sort()
  return {
    mostDb: Math.max(0, -(working[0] ?? 0)),
    typicalDb: Math.max(0, -(working[working.length >> 1] ?? 0)),
  }
}
