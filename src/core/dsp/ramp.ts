/** A number that moves to new values along a straight line, frame by frame. */
export class Ramp {
  private target: number
  private step = 0
  private framesLeft = 0

  constructor(private value: number) {
    this.target = value
  }

  /** Value before the next frame. */
  get now(): number {
    return this.value
  }

  /** What the value grows by with each frame while a ramp runs, else 0. */
  get perFrame(): number {
    return this.step
  }

  /** Frames until the target is reached; 0 when it stands still. */
  get left(): number {
    return this.framesLeft
  }

  /** Sets out for `target`, to arrive after `frames`; at once if `frames` is 0. */
  goTo(target: number, frames: number): void {
    this.target = target
    if (frames === 0 || target === this.value) {
      this.finish()
    } else {
      this.framesLeft = frames
      this.step = (target - this.value) / frames
    }
  }

  /** Value of frame `n` from now, counting from 0; after the ramp its target. Reads ahead, moves nothing. */
  at(n: number): number {
    return n < this.framesLeft - 1 ? this.value + (n + 1) * this.step : this.target
  }

  /** Lets any number of `frames` pass that were read by {@link at}. */
  pass(frames: number): void {
    if (frames >= this.framesLeft) {
      this.finish()
    } else {
      this.value += frames * this.step
      this.framesLeft -= frames
    }
  }

  /** Lets `frames` pass, at most {@link left}, adding {@link perFrame} in each. */
  advanceBy(frames: number): void {
    if (this.framesLeft === 0) return
    let value = this.value
    for (let n = 0; n < frames; n++) value += this.step
    this.advanceTo(value, frames)
  }

  /** Takes over `value`, reached by adding {@link perFrame} for `frames` (at most {@link left}) frames. */
  advanceTo(value: number, frames: number): void {
    if (this.framesLeft === 0) return
    this.framesLeft -= frames
    if (this.framesLeft === 0) this.finish()
    else this.value = value
  }

  /** Stands at the target. */
  finish(): void {
    this.value = this.target
    this.step = 0
    this.framesLeft = 0
  }
}
