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

/** A ring of past values, written twice so that any window of it can be read without wrapping. */
class History {
  readonly values: Float64Array
  private position = 0

  constructor(readonly length: number) {
    this.values = new Float64Array(2 * length)
  }

  /** Adds a value; returns the index of the oldest of the last `length` values. */
  push(value: number): number {
    this.values[this.position] = value
    this.values[this.position + this.length] = value
    this.position = this.position + 1 === this.length ? 0 : this.position + 1
    return this.position
  }

  reset(): void {
    this.values.fill(0)
    this.position = 0
  }
}

/**
 * Sum over k of `taps[k] (values[before - k] + values[after + k])`. Four sums at a time, which do not wait for one
 * another; the number of taps is a multiple of four.
 */
function symmetricSum(taps: Float64Array, values: Float64Array, before: number, after: number): number {
  let a = 0
  let b = 0
  let c = 0
  let d = 0
  for (let k = 0; k < taps.length; k += 4) {
    const left = before - k
    const right = after + k
    a += (taps[k] ?? 0) * ((values[left] ?? 0) + (values[right] ?? 0))
    b += (taps[k + 1] ?? 0) * ((values[left - 1] ?? 0) + (values[right + 1] ?? 0))
    c += (taps[k + 2] ?? 0) * ((values[left - 2] ?? 0) + (values[right + 2] ?? 0))
    d += (taps[k + 3] ?? 0) * ((values[left - 3] ?? 0) + (values[right + 3] ?? 0))
  }
  return a + b + (c + d)
}

/** Doubles the rate of one channel. Delay: `2 * sideTaps - 1` frames of the higher rate. */
export class HalfBandUp {
  private readonly history: History

  constructor(private readonly taps: Float64Array) {
    this.history = new History(2 * taps.length)
  }

  /** Reads `count` frames of `input`, writes `2 * count` to `output`. */
  process(input: Float64Array, count: number, output: Float64Array): void {
    const { taps, history } = this
    const side = taps.length
    const values = history.values
    for (let n = 0; n < count; n++) {
      const oldest = history.push(input[n] ?? 0)
      const before = oldest + side - 1
      const after = oldest + side
      output[2 * n] = 2 * symmetricSum(taps, values, before, after)
      output[2 * n + 1] = values[after] ?? 0
    }
  }

  reset(): void {
    this.history.reset()
  }
}

/** Halves the rate of one channel. Delay: `2 * sideTaps - 1` frames of the higher rate. */
export class HalfBandDown {
  private readonly odd: History
  private readonly even: History

  constructor(private readonly taps: Float64Array) {
    this.odd = new History(taps.length + 1)
    this.even = new History(2 * taps.length)
  }

  /** Reads `2 * count` frames of `input`, writes `count` to `output`. */
  process(input: Float64Array, count: number, output: Float64Array): void {
    const { taps, even, odd } = this
    const side = taps.length
    const values = even.values
    for (let n = 0; n < count; n++) {
      const middle = odd.values[odd.push(input[2 * n + 1] ?? 0)] ?? 0
      const oldest = even.push(input[2 * n] ?? 0)
      const before = oldest + side - 1
      const after = oldest + side
      output[n] = symmetricSum(taps, values, before, after) + 0.5 * middle
    }
  }

  reset(): void {
    this.odd.reset()
    this.even.reset()
  }
}
