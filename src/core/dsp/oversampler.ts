import { HalfBandDown, HalfBandUp, halfBandTaps } from './half-band'

/** How many times the rate is raised. */
export const OVERSAMPLING = 4

/** The outer step must pass what is heard and stop its mirror image; the inner one has an octave to spare. */
const OUTER_SIDE_TAPS = 32
const INNER_SIDE_TAPS = 8
const KAISER_BETA = 10

/** Delay of up and down together, in frames of the base rate: 2 * 32 - 1 of the outer step, 8 of the inner. */
export const OVERSAMPLER_LATENCY_FRAMES = 2 * OUTER_SIDE_TAPS - 1 + INNER_SIDE_TAPS

/**
 * Four times the rate and back for one channel, through two half-band steps each way. The inner step's delay is
 * half a base frame short of a whole one, so one frame of twice the rate is added to it.
 */
export class Oversampler {
  private readonly outerUp: HalfBandUp
  private readonly innerUp: HalfBandUp
  private readonly innerDown: HalfBandDown
  private readonly outerDown: HalfBandDown
  private readonly doubled: Float64Array
  private held = 0

  /** @param mostFrames most base-rate frames worked on at a time */
  constructor(mostFrames: number) {
    const outer = halfBandTaps(OUTER_SIDE_TAPS, KAISER_BETA)
    const inner = halfBandTaps(INNER_SIDE_TAPS, KAISER_BETA)
    this.outerUp = new HalfBandUp(outer)
    this.innerUp = new HalfBandUp(inner)
    this.innerDown = new HalfBandDown(inner)
    this.outerDown = new HalfBandDown(outer)
    this.doubled = new Float64Array(2 * mostFrames)
  }

  /** Reads `count` frames of `input`, writes four times as many to `output`. */
  up(input: Float64Array, count: number, output: Float64Array): void {
    this.outerUp.process(input, count, this.doubled)
    this.innerUp.process(this.doubled, 2 * count, output)
  }

  /** Reads four times `count` frames of `input`, writes `count` to `output`. */
  down(input: Float64Array, count: number, output: Float64Array): void {
    const { doubled } = this
    this.innerDown.process(input, 2 * count, doubled)
    let held = this.held
    for (let n = 0; n < 2 * count; n++) {
      const next = doubled[n] ?? 0
      doubled[n] = held
      held = next
    }
    this.held = held
    this.outerDown.process(doubled, count, output)
  }

  /** Back to silence. */
  reset(): void {
    this.outerUp.reset()
    this.innerUp.reset()
    this.innerDown.reset()
    this.outerDown.reset()
    this.held = 0
  }
}
