import { apart, everySecond, type Pairs, symmetricFilter } from './symmetric-filter'

/**
 * One factor-of-two change of rate through a linear-phase half-band low-pass, windowed sinc with a Kaiser window.
 * Every second tap of such a filter is 0 but for the middle one, so going up one phase is a plain delay and
 * coming down the even samples need no multiplication.
 * Source: J. F. Kaiser, "Nonrecursive Digital Filter Design Using the I0-sinh Window Function" (1974).
 */

/**
 * The taps of odd index, h[1], h[3] ... as seen from the middle; symmetric, both sides add up to 0.5.
 * @param sideTaps how many on one side, a multiple of 4
 * @param beta of the Kaiser window: higher stops more, over a wider transition
 */
export function halfBandTaps(sideTaps: number, beta: number): Float64Array {
  const reach = 2 * sideTaps
  const taps = Float64Array.from({ length: sideTaps }, (_, k) => {
    const distance = 2 * k + 1
    const sinc = Math.sin((Math.PI * distance) / 2) / (Math.PI * distance)
    return sinc * (besselI0(beta * Math.sqrt(1 - (distance / reach) ** 2)) / besselI0(beta))
  })
  // Exactly unity at DC: the two sides together must make up the other half of the middle tap.
  const total = taps.reduce((sum, tap) => sum + tap, 0)
  return taps.map((tap) => (tap * 0.25) / total)
}

/** Modified Bessel function of the first kind, order 0, by its power series. */
function besselI0(x: number): number {
  let term = 1
  let sum = 1
  for (let k = 1; term > 1e-17 * sum; k++) {
    term *= (x / (2 * k)) ** 2
    sum += term
  }
  return sum
}

/** Samples that may be read or written behind a block, whatever they hold: outputs are worked out two at a time. */
const SPARE = 3

/** A block of samples, with those that came before it in front, all in one piece. */
export class SampleBlock {
  readonly values: Float64Array

  /**
   * @param past samples kept of what came before the block, which begins at this index
   * @param most longest block
   */
  constructor(
    readonly past: number,
    most: number,
  ) {
    this.values = new Float64Array(past + most + SPARE)
  }

  /** Makes the `count` samples of the block, done with, the last of the past. */
  pass(count: number): void {
    this.values.copyWithin(0, count, count + this.past)
  }

  /** Back to silence. */
  reset(): void {
    this.values.fill(0)
  }
}

/**
 * One doubling of the rate of one channel. The even frames of what comes out are worked out, the odd ones are the
 * input delayed. Delay: `2 * sideTaps - 1` frames of the higher rate.
 */
export class HalfBandUp {
  /** Where its input is written. */
  readonly input: SampleBlock
  private readonly doubled: Float64Array
  private readonly even: Pairs

  /**
   * @param most longest block at the lower rate
   * @param output where what comes out is written
   */
  constructor(
    taps: Float64Array,
    most: number,
    private readonly output: SampleBlock,
  ) {
    this.input = new SampleBlock(2 * taps.length, most)
    this.doubled = taps.map((tap) => 2 * tap)
    this.even = everySecond(output.values, output.past)
  }

  /** Takes `count` frames of `input` and writes `2 * count`. */
  process(count: number): void {
    const { doubled, even } = this
    const { values, past } = this.input
    const { values: output, past: start } = this.output
    const left = past - doubled.length
    symmetricFilter(doubled, null, values, left, even, count)
    for (let n = 0; n < count; n++) output[start + 2 * n + 1] = values[left + 1 + n] ?? 0
    this.input.pass(count)
  }

  /** Back to silence. */
  reset(): void {
    this.input.reset()
  }
}

/**
 * One halving of the rate of one channel, from even and odd frames apart. Delay: `2 * sideTaps - 1` frames of the
 * higher rate, and what is asked for.
 */
export class HalfBandDown {
  /** Where its input is written, even and odd frames of the higher rate apart. */
  readonly phases: Pairs
  private readonly even: SampleBlock
  private readonly odd: SampleBlock
  private readonly left: number

  /**
   * @param most longest block at the lower rate
   * @param output where what comes out is written
   * @param delay further frames of the lower rate by which it is late
   */
  constructor(
    private readonly taps: Float64Array,
    most: number,
    private readonly output: Pairs,
    delay = 0,
  ) {
    const past = 2 * taps.length + delay
    this.even = new SampleBlock(past, most)
    this.odd = new SampleBlock(past, most)
    this.phases = apart(this.even.values, this.odd.values, past)
    this.left = past - delay - taps.length
  }

  /** Takes `count` even and odd frames and writes as many. */
  process(count: number): void {
    symmetricFilter(this.taps, this.odd.values, this.even.values, this.left, this.output, count)
    this.even.pass(count)
    this.odd.pass(count)
  }

  /** Back to silence. */
  reset(): void {
    this.even.reset()
    this.odd.reset()
  }
}
