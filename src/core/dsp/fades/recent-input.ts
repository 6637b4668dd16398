import { copyFrames } from './copy-frames'

/** Remembers the last frames that went by, so that a filter can hear them before it is heard itself. */
export class RecentInput {
  private readonly rings: readonly Float32Array[]
  private position = 0

  /** @param frames how many are remembered; 0 for none. Before the first they are silence. */
  constructor(
    channelCount: number,
    private readonly frames: number,
  ) {
    this.rings = Array.from({ length: channelCount }, () => new Float32Array(frames))
  }

  /** Remembers `count` frames (at most as many as are remembered) of every channel, from frame `from` on. */
  write(channels: readonly Float32Array[], from: number, count: number): void {
    const { frames, rings } = this
    if (frames === 0) return
    const { position } = this
    const beforeEnd = Math.min(count, frames - position)
    for (let c = 0; c < rings.length; c++) {
      const samples = channels[c]
      const ring = rings[c]
      if (!samples || !ring) continue
      copyFrames(samples, from, ring, position, beforeEnd)
      copyFrames(samples, from + beforeEnd, ring, 0, count - beforeEnd)
    }
    this.position = (position + count) % frames
  }

  /**
   * Writes what is remembered, oldest first and faded in over its first half, piece by piece into `buffer`, and
   * calls `hear` for each piece: the first `count` values are the next of `channel`.
   */
  replay(buffer: Float32Array, hear: (channel: number, count: number) => void): void {
    const { frames, rings } = this
    for (let c = 0; c < rings.length; c++) {
      const ring = rings[c]
      if (!ring) continue
      for (let done = 0; done < frames; done += buffer.length) {
        const count = Math.min(buffer.length, frames - done)
        for (let n = 0; n < count; n++) {
          const weight = Math.min(1, (2 * (done + n + 1)) / frames)
          buffer[n] = weight * (ring[(this.position + done + n) % frames] ?? 0)
        }
        hear(c, count)
      }
    }
  }

  /** Back to silence. */
  reset(): void {
    for (const ring of this.rings) ring.fill(0)
    this.position = 0
  }
}
