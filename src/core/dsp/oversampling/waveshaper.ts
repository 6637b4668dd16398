import type { Pairs } from './symmetric-filter'

/** Pieces of the table per unit of x. */
const PIECES = 160

/** Beyond this, tanh is 1 to less than the error stated: 1 - tanh(16) is 2.5e-14. */
const SATURATED = 16

/** Powers of the polynomial of each piece, from 0 to 4: what is left out is below `16 / 120 / 320^5` = 4e-14. */
const COEFFICIENTS = 5

/** Index of the piece around x = 0. */
const MIDDLE = SATURATED * PIECES

/** The Taylor polynomial of tanh about the middle of each piece, in pieces from there. */
const TANH = tanhTable()

/**
 * From the differential equation y' = 1 - y^2: `(n + 1) c[n + 1] = [n = 0] - sum over i of c[i] c[n - i]`.
 * About 0 every even power is exactly 0, so that silence stays silent.
 */
function tanhTable(): Float64Array {
  const table = new Float64Array((2 * MIDDLE + 1) * COEFFICIENTS)
  for (let piece = 0; piece <= 2 * MIDDLE; piece++) {
    const c = [Math.tanh((piece - MIDDLE) / PIECES)]
    for (let n = 0; n + 1 < COEFFICIENTS; n++) {
      const square = c.reduce((sum, value, i) => sum + value * (c[n - i] ?? 0), 0)
      c.push(((n === 0 ? 1 : 0) - square) / (n + 1))
    }
    c.forEach((value, n) => {
      table[piece * COEFFICIENTS + n] = value / PIECES ** n
    })
  }
  return table
}

/**
 * Hyperbolic tangent from `table`, which is {@link TANH}: a loop reads it from a local. `| 0` says that an index stays
 * a small whole number, which is else checked at every sum.
 */
function tanhFrom(table: Float64Array, x: number): number {
  const pieces = PIECES * Math.max(-SATURATED, Math.min(SATURATED, x))
  const piece = (pieces + (MIDDLE + 0.5)) | 0
  const t = pieces - (piece - MIDDLE)
  const at = (piece * COEFFICIENTS) | 0
  return (
    (table[at] ?? 0) +
    t *
      ((table[(at + 1) | 0] ?? 0) +
        t * ((table[(at + 2) | 0] ?? 0) + t * ((table[(at + 3) | 0] ?? 0) + t * (table[(at + 4) | 0] ?? 0))))
  )
}

/** Hyperbolic tangent; absolute error below 1e-13. */
export function fastTanh(x: number): number {
  return tanhFrom(TANH, x)
}

/** What a sample becomes: `(tanh(drive x + bias) - rest) wet`, where `rest` is tanh(bias). */
export interface TanhCurve {
  readonly drive: number
  readonly bias: number
  readonly rest: number
  readonly wet: number
}

/** What the sample `x` becomes. */
export function curveAt(x: number, { drive, bias, rest, wet }: TanhCurve): number {
  return (fastTanh(drive * x + bias) - rest) * wet
}

/** Puts the first `2 * pairs` of `input` through a curve. */
export function shape(input: Float64Array, output: Pairs, pairs: number, curve: TanhCurve): void {
  const { drive, bias, rest, wet } = curve
  const { first, firstStart, second, secondStart, step } = output
  const table = TANH
  for (let m = 0; m < pairs; m++) {
    first[firstStart + m * step] = (tanhFrom(table, drive * (input[2 * m] ?? 0) + bias) - rest) * wet
    second[secondStart + m * step] = (tanhFrom(table, drive * (input[2 * m + 1] ?? 0) + bias) - rest) * wet
  }
}
