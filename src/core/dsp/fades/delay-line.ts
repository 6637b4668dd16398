/** A delay by a fixed number of frames, in place, for one channel. State starts silent. */
export class DelayLine {
  private readonly ring: Float32Array
  private position = 0

  /** @param frames delay in frames, 0 or more. */
  constructor(frames: number) {
    this.ring = new Float32Array(frames)
  }

  /** Delays `count` frames of `samples`, from frame `from` on, in place. */
  process(samples: Float32Array, from: number, count: number): void {
    const ring = this.ring
    const length = ring.length
    if (length === 0) return
    let position = this.position
    const end = from + count
    for (let n = from; n < end; n++) {
      const delayed = ring[position] ?? 0
      ring[position] = samples[n] ?? 0
      samples[n] = delayed
      position = position + 1 === length ? 0 : position + 1
    }
    this.position = position
  }

  /** Back to silence. */
  reset(): void {
    this.ring.fill(0)
    this.position = 0
  }
}
