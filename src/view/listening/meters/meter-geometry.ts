/** The quietest level that the output meter shows, dBFS; its end is full scale. */
const LOWEST_DBFS = -48
/** Where peaks are limited, dBFS: the engine's own ceiling. */
export const CEILING_DBFS = -1
/** As near to the ceiling as a limited peak prints. */
const AT_CEILING_DB = 0.05
/** The largest gain reduction that its meter shows, dB. */
const MOST_REDUCTION_DB = 20
/** How long a peak stands before the present level takes its place, ms. */
const HOLD_MS = 1500

/** Share of the output meter that a peak fills, 0 to 1. */
export function outputShare(peakDbfs: number): number {
  return clamped((peakDbfs - LOWEST_DBFS) / -LOWEST_DBFS)
}

/** Share of the reduction meter that a reduction fills, 0 to 1. */
export function reductionShare(reductionDb: number): number {
  return clamped(reductionDb / MOST_REDUCTION_DB)
}

/** Whether a peak at the output is one that was held down to the ceiling. */
export function isLimited(peakDbfs: number): boolean {
  return peakDbfs > CEILING_DBFS - AT_CEILING_DB
}

/** The largest gain reduction of all stages, dB, 0 or more. */
export function largestReductionDb(stageGainsDb: readonly number[]): number {
  return stageGainsDb.reduce((most, gainDb) => Math.max(most, -gainDb), 0)
}

/** The largest value of late: it stands for a while, and then gives way to the present one. */
export class PeakHold {
  private held = Number.NEGATIVE_INFINITY
  private heldAtMs = 0

  /** The value to show once `value` has come. */
  next(value: number, nowMs: number): number {
    if (value >= this.held || nowMs - this.heldAtMs > HOLD_MS) {
      this.held = value
      this.heldAtMs = nowMs
    }
    return this.held
  }

  clear(): void {
    this.held = Number.NEGATIVE_INFINITY
  }
}

function clamped(share: number): number {
  return Math.min(Math.max(share, 0), 1)
}
