/**
 * How far a fade has come at `part` (0 to 1) of its time: 0 to 1, level at both ends, so that what it spreads
 * around a tone falls off by 18 dB per octave, where that of a straight line falls off by 12.
 */
export function smoothStep(part: number): number {
  return part * part * (3 - 2 * part)
}

/**
 * A fade from what stands to what is coming, frame by frame along {@link smoothStep}. Asked for more during a fade,
 * it goes there next; the last asked for wins.
 */
export class CrossFade<Thing> {
  /** What is faded to; the same as what stands while nothing is. */
  coming: Thing
  /** Frames until what is coming stands; 0 where nothing fades. */
  framesLeft = 0
  private waiting: Thing | null = null
  private started = false

  /**
   * @param frames length of a fade; 0 goes to everything at once.
   * @param begin called with what is coming, as a fade to it begins or it is gone to at once
   */
  constructor(
    public standing: Thing,
    private readonly frames: number,
    private readonly begin: (coming: Thing) => void = () => {},
  ) {
    this.coming = standing
  }

  /** Share of what is coming in frame `n` from now, counting from 0; `n` below {@link framesLeft}, or none fades. */
  share(n: number): number {
    return this.framesLeft === 0 ? 1 : smoothStep((this.frames - this.framesLeft + n + 1) / this.frames)
  }

  /** Goes to `next`: at once before the first frame, faded after it, once what is fading now has arrived. */
  goTo(next: Thing): void {
    if (this.framesLeft > 0) {
      this.waiting = next
      return
    }
    this.framesLeft = this.started ? this.frames : 0
    this.coming = next
    if (this.framesLeft === 0) this.standing = next
    this.begin(next)
  }

  /** Lets `count` frames pass, at most {@link framesLeft} while something fades. */
  pass(count: number): void {
    this.started = true
    if (this.framesLeft === 0) return
    this.framesLeft -= count
    if (this.framesLeft > 0) return
    const { waiting } = this
    this.standing = this.coming
    this.waiting = null
    if (waiting !== null) this.goTo(waiting)
  }

  /** Stands where it was last asked to go, with the first frame still to come. */
  reset(): void {
    const { waiting } = this
    this.standing = this.coming
    this.framesLeft = 0
    this.waiting = null
    this.started = false
    if (waiting !== null) this.goTo(waiting)
  }
}

/** `count` frames, or fewer where a fade with `framesLeft` ends within them: what is worked on at a time. */
export function upToEnd(count: number, framesLeft: number): number {
  return framesLeft > 0 ? Math.min(count, framesLeft) : count
}
