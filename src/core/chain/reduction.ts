import type { Trace } from './trace'

/** Gain reduction of a stage along a take, dB (0 or more). */
export interface ReductionSummary {
  readonly maxDb: number
  /** Median over the time in which it reduced at all. */
  readonly medianDb: number
}

/** Below this a stage counts as not reducing, dB. */
const IDLE_DB = 0.1

/** The maximum and the median gain reduction of a trace. */
export function reductionSummary({ gainDb }: Trace): ReductionSummary {
  const working = gainDb.filter((gain) => gain < -IDLE_DB).sort()
  return {
    maxDb: Math.max(0, -(working[0] ?? 0)),
    medianDb: Math.max(0, -(working[working.length >> 1] ?? 0)),
  }
}
