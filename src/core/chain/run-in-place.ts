import type { Processor, ReductionReader } from '../stages/processor'
import { contain } from './contain'

/**
 * Runs a processor over `channels`, in place, in steps of one block: yields the share done after each.
 * @param reader told what a stage that reduces gain reduces it by
 */
export function* runInPlace(
  processor: Pick<Processor<never>, 'process'>,
  channels: readonly Float32Array[],
  blockFrames: number,
  reader?: ReductionReader,
): Generator<number, void, void> {
  const total = channels[0]?.length ?? 0
  for (let from = 0; from < total; from += blockFrames) {
    const count = Math.min(blockFrames, total - from)
    const block = channels.map((samples) => samples.subarray(from, from + count))
    processor.process(block, count, reader)
    contain(block, count)
    yield (from + count) / total
  }
}
