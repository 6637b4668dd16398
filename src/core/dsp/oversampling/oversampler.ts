import { HalfBandDown, HalfBandUp, halfBandTaps, SampleBlock } from './half-band'
import { OVERSAMPLING, PADDING_AT_TOP, SIDE_TAPS } from './rate'
import { inOrder, type Pairs } from './symmetric-filter'

const KAISER_BETA = 10

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
