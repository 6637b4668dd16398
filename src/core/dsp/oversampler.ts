import { HalfBandDown, HalfBandUp, halfBandTaps } from './half-band'
import { LevelDelay } from './level-delay'

/** How many times the rate is raised. */
export const OVERSAMPLING = 8

/**
 * Side taps of each doubling, lowest rate first. The first must pass what is heard and stop its mirror image close
 * by; the further ones have an octave and more to spare.
 */
const SIDE_TAPS = [32, 8, 4] as const
const KAISER_BETA = 10

/** Delay up and down together in frames of the highest rate, `2 (2 side taps - 1)` of its own rate for each step. */
const DELAY_AT_TOP = SIDE_TAPS.reduce(
  (sum, side, step) => sum + 2 * (2 * side - 1) * 2 ** (SIDE_TAPS.length - 1 - step),
  0,
)

/** Delay of up and down together, in whole frames of the base rate. */
export const OVERSAMPLER_LATENCY_FRAMES = Math.ceil(DELAY_AT_TOP / OVERSAMPLING)

const PADDING_AT_TOP = OVERSAMPLER_LATENCY_FRAMES * OVERSAMPLING - DELAY_AT_TOP

/** Eight times the rate and back for one channel, through three half-band steps each way. */
export class Oversampler {
  private readonly ups: readonly HalfBandUp[]
  private readonly downs: readonly HalfBandDown[]
  /** What passes between the steps: twice the rate, four times the rate. */
  private readonly between: readonly Float64Array[]
  private readonly padding = new LevelDelay(PADDING_AT_TOP)

  /** @param mostFrames most base-rate frames worked on at a time */
  constructor(mostFrames: number) {
    const taps = SIDE_TAPS.map((side) => halfBandTaps(side, KAISER_BETA))
    this.ups = taps.map((step) => new HalfBandUp(step))
    this.downs = taps.map((step) => new HalfBandDown(step))
    this.between = SIDE_TAPS.map((_, step) => new Float64Array(mostFrames * 2 ** (step + 1)))
  }

  /** Reads `count` frames of `input`, writes eight times as many to `output`. */
  up(input: Float64Array, count: number, output: Float64Array): void {
    let from = input
    for (let step = 0; step < this.ups.length; step++) {
      const to = step === this.ups.length - 1 ? output : (this.between[step] ?? output)
      this.ups[step]?.process(from, count * 2 ** step, to)
      from = to
    }
  }

  /** Reads eight times `count` frames of `input` (which is overwritten), writes `count` to `output`. */
  down(input: Float64Array, count: number, output: Float64Array): void {
    this.padding.process(input, count * OVERSAMPLING)
    let from = input
    for (let step = this.downs.length - 1; step >= 0; step--) {
      const to = step === 0 ? output : (this.between[step - 1] ?? output)
      this.downs[step]?.process(from, count * 2 ** step, to)
      from = to
    }
  }

  /** Back to silence. */
  reset(): void {
    for (const step of [...this.ups, ...this.downs]) step.reset()
    this.padding.reset()
  }
}
