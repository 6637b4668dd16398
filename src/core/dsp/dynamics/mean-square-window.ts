/**
 * Adding and taking away one of these rounds a number to a multiple of 2^-24 or 2^-64. Squares cut into such
 * pieces add up without any rounding, so that the running sum never drifts and does not depend on the past.
 */
const TO_COARSE = 1.5 * 2 ** 28
const TO_FINE = 1.5 * 2 ** -12

/** Levels above this count as this: their squares would not fit. */
const MOST = 8192

/** Sliding mean of squares over a rectangular window, exact to 2^-64. Levels up to 8192 times full scale (+78 dB). */
export class MeanSquareWindow {
  private readonly coarse: Float64Array
  private readonly fine: Float64Array
  private position = 0
  private coarseSum = 0
  private fineSum = 0

  /** @param frames length of the window, 1 or more */
  constructor(frames: number) {
    this.coarse = new Float64Array(Math.max(1, frames))
    this.fine = new Float64Array(Math.max(1, frames))
  }

  /** Replaces the first `count` of `levels` (linear, 0 or more) by their root mean square. */
  process(levels: Float64Array, count: number): void {
    const { coarse, fine } = this
    const length = coarse.length
    let { position, coarseSum, fineSum } = this
    for (let n = 0; n < count; n++) {
      const level = Math.min(levels[n] ?? 0, MOST)
      const square = level * level
      const coarsePart = square + TO_COARSE - TO_COARSE
      const finePart = square - coarsePart + TO_FINE - TO_FINE
      coarseSum += coarsePart - (coarse[position] ?? 0)
      fineSum += finePart - (fine[position] ?? 0)
      coarse[position] = coarsePart
      fine[position] = finePart
      position = position + 1 === length ? 0 : position + 1
      levels[n] = Math.sqrt((coarseSum + fineSum) / length)
    }
    this.position = position
    this.coarseSum = coarseSum
    this.fineSum = fineSum
  }

  /** Forgets all past input. */
  reset(): void {
    this.coarse.fill(0)
    this.fine.fill(0)
    this.position = 0
    this.coarseSum = 0
    this.fineSum = 0
  }
}
