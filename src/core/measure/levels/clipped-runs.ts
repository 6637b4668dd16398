/** Just below the largest positive value of 16-bit sound, 1 - 2^-15, so that both its rails count. */
export const RAIL = 1 - 2 ** -14
/** A peak may touch the rail by itself; a wave that was cut off stays there. */
const SHORTEST_CLIPPED_RUN = 3

/**
 * Finds the clipped samples of a channel from its start on. A sample is clipped when it belongs to a run of at least
 * three samples of the same value at or beyond full scale (to within one step of 15-bit sound).
 */
export class ClippedRuns {
  /** Clipped samples so far. */
  count = 0
  private previous = 0
  private run = 0

  /** @param onRun told of each run of clipped samples, from frame `from` up to `to`, once it has ended */
  constructor(private readonly onRun?: (from: number, to: number) => void) {}

  /** Goes on with frames `from` up to `to`. */
  add(samples: Float32Array, from: number, to: number): void {
    let { count, previous, run } = this
    for (let i = from; i < to; i++) {
      const x = samples[i] ?? 0
      const isBelow = x < RAIL && x > -RAIL
      if (!isBelow && run > 0 && x === previous) {
        run++
        if (run === SHORTEST_CLIPPED_RUN) count += SHORTEST_CLIPPED_RUN
        else if (run > SHORTEST_CLIPPED_RUN) count++
        continue
      }
      if (run >= SHORTEST_CLIPPED_RUN) this.onRun?.(i - run, i)
      run = isBelow ? 0 : 1
      previous = x
    }
    this.count = count
    this.previous = previous
    this.run = run
  }

  /** Tells of the run that the channel ends with, at frame `frames`. */
  end(frames: number): void {
    if (this.run >= SHORTEST_CLIPPED_RUN) this.onRun?.(frames - this.run, frames)
    this.run = 0
  }
}
