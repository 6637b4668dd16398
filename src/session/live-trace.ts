import type { StretchTrace } from '../compute/lanes/live-traces'
import { putStretches, withStretches } from '../compute/lanes/live-traces'
import type { Trace } from '../core'

/** Hops of a trace, end not included. */
export interface HopRange {
  readonly from: number
  readonly to: number
}

/** A gain trace newer than the evidence; in part still that of the evidence. */
export interface LiveTrace {
  /** One and the same while a hand moves, and filled on in place: `changed` tells what of it is news. */
  readonly trace: Trace
  /** What differs from the live trace before this one; all of it where there was none. */
  readonly changed: HopRange
}

/**
 * Puts stretches that have come, in order, into the live trace of a stage; without one, into a copy of what is known.
 * @param known the evidence's trace, null for no reduction anywhere
 * @param stretches at least one
 * @param frames length of the take
 */
export function followed(
  live: LiveTrace | undefined,
  known: Trace | null,
  stretches: readonly StretchTrace[],
  frames: number,
): LiveTrace {
  if (!live) {
    const trace = withStretches(known, stretches, frames)
    return { trace, changed: { from: 0, to: trace.gainDb.length } }
  }
  const { trace } = live
  putStretches(trace.gainDb, stretches)
  const changed = {
    from: Math.min(...stretches.map(({ firstHop }) => firstHop)),
    to: Math.max(...stretches.map(({ firstHop, gainDb }) => firstHop + gainDb.length)),
  }
  return { trace, changed }
}
