import type { ReductionReader } from '../../src/core'

/** Collects the gain of every frame, dB (0 or less), that a stage tells of. */
export class GainCollector implements ReductionReader {
  readonly gainDb: number[] = []

  read(reductionsDb: Float64Array, count: number): void {
    for (const reduction of reductionsDb.subarray(0, count)) this.gainDb.push(0 - reduction)
  }
}
