import type { FrameRange } from '../../core'

/**
 * From the audio system to the ear, seconds, where nothing longer is known. Not asked of the browser: reading
 * `outputLatency` can deadlock Firefox for good. 0.032 is what Chromium 156 on Linux tells of a wired output.
 */
const TYPICAL_OUTPUT_SECONDS = 0.032

/**
 * Time from the engine to the ear, seconds: what the context buffers, and a typical output behind it. Wireless outputs
 * take longer, some by 0.2 s (common practice, no source): the playhead is early there by as much.
 */
export function secondsToEar({ baseLatency }: Pick<AudioContext, 'baseLatency'>): number {
  return baseLatency + TYPICAL_OUTPUT_SECONDS
}

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
  at(frame: number, delayFrames: number, loop: FrameRange | null): number {
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
