/** Delays a stream of levels by a number of frames that may change at any time, up to a fixed most. */
export class LevelDelay {
  private readonly ring: Float64Array
  private position = 0

  /** @param mostFrames longest delay that `process` will be asked for. */
  constructor(mostFrames: number) {
    this.ring = new Float64Array(mostFrames + 1)
  }

  /** Replaces the first `count` of `levels` by those of `delayFrames` before. */
  process(levels: Float64Array, count: number, delayFrames: number): void {
    const ring = this.ring
    const length = ring.length
    if (length === 1) return
    let write = this.position
    let read = (write - delayFrames + length) % length
    for (let n = 0; n < count; n++) {
      ring[write] = levels[n] ?? 0
      levels[n] = ring[read] ?? 0
      write = write + 1 === length ? 0 : write + 1
      read = read + 1 === length ? 0 : read + 1
    }
    this.position = write
  }

  /** Back to silence. */
  reset(): void {
    this.ring.fill(0)
    this.position = 0
  }
}
