import type { StretchTrace } from '../evidence/evidence'
import { type ChangedPart, LiveTraces } from '../evidence/live-traces'
import type { FrameRange } from '../evidence/matching'
import type { Sweep } from '../evidence/sweep'
import { inSlices, nextTask } from './slices'

/** A piece, frames: what is newer than a request waits for the end of one, and warms up anew. */
export const PIECE_FRAMES = 2 ** 17

/**
 * Traces `stretch` once, piece by piece from where the last round of `sweep` ended.
 * @param isNewest asked between two pieces: one that is begun is given, for a hand that never rests
 * @param stands asked at any time: whether the take is still there
 * @returns whether it came to the end
 */
export async function traceRound(
  part: ChangedPart,
  stretch: FrameRange,
  sweep: Sweep,
  { isNewest, stands }: { isNewest(): boolean; stands(): boolean },
  onTrace: (trace: StretchTrace) => void,
): Promise<boolean> {
  let traces: LiveTraces | undefined
  for (const { from, to } of sweep.round(stretch)) {
    if (traces?.at !== from) traces = new LiveTraces(part, { from, to: stretch.to })
    await inSlices(traces.goOn(to), stands, (trace) => trace && onTrace(trace))
    // Pieces are shorter than slices: what has arrived is handled between them.
    await nextTask()
    if (!isNewest()) return false
  }
  return true
}
