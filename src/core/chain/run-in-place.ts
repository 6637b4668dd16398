import type { Processor } from '../stages/stage-definition'
import { contain } from './contain'
import type { TraceBuilder } from './trace'

/**
 * Runs a processor over `channels`, in place, in steps of one block: yields the share done after each.
 * @param leadInFrames frames of what comes out that lie ahead of frame 0 of the take
 * @param trace receives the gains, where the stage reduces gain and they are wanted
 */
export function* runInPlace(
  processor: Pick<Processor<never>, 'process'>,
  channels: readonly Float32Array[],
  blockFrames: number,
  leadInFrames: number,
  trace: TraceBuilder | null,
): Generator<number, void, void> {
  const total = channels[0]?.length ?? 0
  const gainDb = trace ? new Float32Array(Math.min(blockFrames, total)) : undefined
  for (let from = 0; from < total; from += blockFrames) {
    const count = Math.min(blockFrames, total - from)
    const block = channels.map((samples) => samples.subarray(from, from + count))
    processor.process(block, count, gainDb)
    contain(block, count)
    if (trace && gainDb) trace.add(gainDb, from - leadInFrames, count)
    yield (from + count) / total
  }
}
