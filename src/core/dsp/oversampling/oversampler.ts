import { HalfBandDown, HalfBandUp, halfBandTaps, SampleBlock } from './half-band'
import { inOrder, type Pairs } from './symmetric-filter'

/** How many times the rate is raised. */
export const OVERSAMPLING = 8

/**
 * Side taps of each doubling, lowest rate first. The near one must pass what is heard and stop its mirror image close
 * by; the further ones have an octave and more to spare.
 */
const SIDE_TAPS = { near: 32, middle: 8, far: 4 }
const KAISER_BETA = 10

/** Delay of one step up and down again, in frames of its higher rate. */
const delayOf = (sideTaps: number) => 2 * (2 * sideTaps - 1)

/** Delay up and down together in frames of the highest rate. */
const DELAY_AT_TOP = 4 * delayOf(SIDE_TAPS.near) + 2 * delayOf(SIDE_TAPS.middle) + delayOf(SIDE_TAPS.far)

/** Delay of up and down together, in whole frames of the base rate. */
export const OVERSAMPLER_LATENCY_FRAMES = Math.ceil(DELAY_AT_TOP / OVERSAMPLING)

const PADDING_AT_TOP = OVERSAMPLER_LATENCY_FRAMES * OVERSAMPLING - DELAY_AT_TOP

/**
 * Eight times the rate and back for one channel, through three half-band steps each way, each of which writes into the
 * input of the next. The way down takes even and odd frames apart.
 */
export class Oversampler {
  /** Where {@link up} leaves its frames. */
  readonly raised: Float64Array
  /** Where {@link down} takes them from, two at a time. */
  readonly shaped: Pairs
  /** What {@link down} brings back. */
  readonly output: Float64Array
  private readonly ups: readonly [HalfBandUp, HalfBandUp, HalfBandUp]
  private readonly downs: readonly [HalfBandDown, HalfBandDown, HalfBandDown]

  /** @param most most base-rate frames worked on at a time */
  constructor(most: number) {
    const near = halfBandTaps(SIDE_TAPS.near, KAISER_BETA)
    const middle = halfBandTaps(SIDE_TAPS.middle, KAISER_BETA)
    const far = halfBandTaps(SIDE_TAPS.far, KAISER_BETA)

    const raised = new SampleBlock(0, OVERSAMPLING * most)
    const toEightfold = new HalfBandUp(far, 4 * most, raised)
    const toFourfold = new HalfBandUp(middle, 2 * most, toEightfold.input)
    const toDouble = new HalfBandUp(near, most, toFourfold.input)
    this.ups = [toDouble, toFourfold, toEightfold]

    const output = new SampleBlock(0, most)
    const fromDouble = new HalfBandDown(near, most, inOrder(output.values, 0))
    const fromFourfold = new HalfBandDown(middle, 2 * most, fromDouble.phases)
    const fromEightfold = new HalfBandDown(far, 4 * most, fromFourfold.phases, PADDING_AT_TOP / 2)
    this.downs = [fromEightfold, fromFourfold, fromDouble]

    this.raised = raised.values
    this.shaped = fromEightfold.phases
    this.output = output.values
  }

  /** Raises `count` frames of `samples`, from frame `from` on: eight times as many. */
  up(samples: Float32Array, from: number, count: number): void {
    const [toDouble, toFourfold, toEightfold] = this.ups
    const { values, past } = toDouble.input
    for (let n = 0; n < count; n++) values[past + n] = samples[from + n] ?? 0
    toDouble.process(count)
    toFourfold.process(2 * count)
    toEightfold.process(4 * count)
  }

  /** Brings what was shaped down to `count` frames. */
  down(count: number): void {
    const [fromEightfold, fromFourfold, fromDouble] = this.downs
    fromEightfold.process(4 * count)
    fromFourfold.process(2 * count)
    fromDouble.process(count)
  }

  /** Back to silence. */
  reset(): void {
    for (const step of [...this.ups, ...this.downs]) step.reset()
  }
}
