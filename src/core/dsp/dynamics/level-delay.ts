import { CrossFade } from '../fades/cross-fade'

/** Delays a stream of levels by a number of frames that may change at any time, up to a fixed most. */
export class LevelDelay {
  private readonly ring: Float64Array
  private readonly delayFrames: CrossFade<number>
  private position = 0

  /**
   * @param mostFrames longest delay that will be asked for, and the first
   * @param fadeFrames time over which a new delay takes over from the old one
   */
  constructor(mostFrames: number, fadeFrames = 0) {
    this.ring = new Float64Array(mostFrames + 1)
    this.delayFrames = new CrossFade(mostFrames, fadeFrames)
  }

  /** Frames in which `process` may be asked for no more at once, while above 0. */
  get fadeFramesLeft(): number {
    return this.delayFrames.framesLeft
  }

  /** Goes to a delay of `frames`: at once before the first frame, faded after it. */
  goTo(frames: number): void {
    if (frames !== this.delayFrames.standing || this.fadeFramesLeft > 0) this.delayFrames.goTo(frames)
  }

  /** Replaces the first `count` of `levels` by those of so many frames before. */
  process(levels: Float64Array, count: number): void {
    const { ring, delayFrames } = this
    const length = ring.length
    if (length === 1) return
    const fading = delayFrames.framesLeft > 0
    let write = this.position
    let read = (write - delayFrames.standing + length) % length
    let coming = (write - delayFrames.coming + length) % length
    for (let n = 0; n < count; n++) {
      ring[write] = levels[n] ?? 0
      const level = ring[read] ?? 0
      levels[n] = fading ? level + delayFrames.share(n) * ((ring[coming] ?? 0) - level) : level
      write = write + 1 === length ? 0 : write + 1
      read = read + 1 === length ? 0 : read + 1
      coming = coming + 1 === length ? 0 : coming + 1
    }
    this.position = write
    delayFrames.pass(count)
  }

  /** Back to silence, at the delay last asked for. */
  reset(): void {
    this.ring.fill(0)
    this.position = 0
    this.delayFrames.reset()
  }
}
