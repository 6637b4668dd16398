import type { ReductionReader } from '../stages/processor'

/** The largest gain reduction since it was last taken. */
export class LargestReduction implements ReductionReader {
  private largest = 0

  read(reductionsDb: Float64Array, count: number): void {
    let { largest } = this
    for (let n = 0; n < count; n++) {
      const reduction = reductionsDb[n] ?? 0
      if (reduction > largest) largest = reduction
    }
    this.largest = largest
  }

  /** Returns it, dB (0 or more), and starts again from 0. */
  take(): number {
    const { largest } = this
    this.largest = 0
    return largest
  }
}
