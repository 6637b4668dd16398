import type { LoopFrames } from './engine/track-reader'

/**
 * Where in the take the sound is that reaches the ear now: what has left the engine is on its way to the output for
 * a while longer. Frames of the take.
 */
export class HeardPosition {
  private start = 0
  /** End of the loop that the playhead came round; null before it did. */
  private turnedAt: number | null = null
  private last = 0

  /** Playing begins, or goes on, at `frame`. */
  begin(frame: number): void {
    this.start = frame
    this.last = frame
    this.turnedAt = null
  }

  /**
   * @param frame what leaves the engine now
   * @param delayFrames time to the ear
   */
  at(frame: number, delayFrames: number, loop: LoopFrames | null): number {
    if (frame < this.last && loop) {
      this.start = loop.from
      this.turnedAt = loop.to
    }
    this.last = frame
    const before = this.start - (frame - delayFrames)
    if (before <= 0) return frame - delayFrames
    return this.turnedAt === null ? this.start : Math.max(this.start, this.turnedAt - before)
  }
}
