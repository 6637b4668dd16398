/** A number that moves to new values along a straight line, frame by frame. */
export class Ramp {
  private step = 0
  private framesLeft = 0

  constructor(private target: number) {}

  /** Value before the next frame. */
  get now(): number {
    return this.at(-1)
  }

  /** Frames until the target is reached; 0 when it stands still. */
  get left(): number {
    return this.framesLeft
  }

  /** Sets out for `target`, to arrive after `frames`; at once if `frames` is 0. */
  goTo(target: number, frames: number): void {
    const { now } = this
    this.target = target
    this.framesLeft = target === now ? 0 : frames
    if (this.framesLeft > 0) this.step = (target - now) / frames
  }

  /**
   * Value of frame `n` from now, counting from 0; after the ramp its target. Counted back from the target, so that
   * it does not depend on how the frames before were cut into blocks.
   */
  at(n: number): number {
    const stepsLeft = this.framesLeft - 1 - n
    return stepsLeft > 0 ? this.target - stepsLeft * this.step : this.target
  }

  /** Lets `frames` pass. */
  pass(frames: number): void {
    this.framesLeft = Math.max(0, this.framesLeft - frames)
  }

  /** Stands at the target. */
  finish(): void {
    this.framesLeft = 0
  }
}
