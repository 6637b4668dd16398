/** Where outputs go, two at a time: pair m to `first[firstStart + m step]` and `second[secondStart + m step]`. */
export interface Pairs {
  readonly first: Float64Array
  readonly firstStart: number
  readonly second: Float64Array
  readonly secondStart: number
  readonly step: number
}

/** Outputs one behind the other in `values`, from `start` on. */
export function inOrder(values: Float64Array, start: number): Pairs {
  return { first: values, firstStart: start, second: values, secondStart: start + 1, step: 2 }
}

/** Outputs at every second place of `values`, from `start` on. */
export function everySecond(values: Float64Array, start: number): Pairs {
  return { first: values, firstStart: start, second: values, secondStart: start + 2, step: 4 }
}

/** Even and odd outputs apart, either from `start` on. */
export function apart(even: Float64Array, odd: Float64Array, start: number): Pairs {
  return { first: even, firstStart: start, second: odd, secondStart: start, step: 1 }
}

/**
 * A symmetric filter whose taps stand left and right of its middle. Output n, below `count`, is `0.5 middle[left + n]`,
 * where there is a middle, plus the sum over k of `taps[k] (input[left + n - k] + input[left + 1 + n + k])`.
 * Four taps at a time over the whole block: all that their loop holds stays in registers, and its outputs do not wait
 * for one another. Every output is added up in the order of k, wherever a block begins.
 * @param taps of one side from the middle on, a multiple of four
 * @param output where `count` is odd, one output more is written
 */
export function symmetricFilter(
  taps: Float64Array,
  middle: Float64Array | null,
  input: Float64Array,
  left: number,
  output: Pairs,
  count: number,
): void {
  setMiddle(middle, left, output, count)
  for (let k = 0; k < taps.length; k += 4) addFourTaps(taps, k, input, left, output, count)
}

function setMiddle(middle: Float64Array | null, left: number, output: Pairs, count: number): void {
  const { first, second, step } = output
  let toFirst = output.firstStart
  let toSecond = output.secondStart
  for (let n = 0; n < count; n += 2) {
    first[toFirst] = middle ? 0.5 * (middle[left + n] ?? 0) : 0
    second[toSecond] = middle ? 0.5 * (middle[left + n + 1] ?? 0) : 0
    toFirst += step
    toSecond += step
  }
}

/**
 * Two outputs a turn. The samples they meet stand in locals, from the farthest left (l4) to the farthest right (r5).
 * `| 0` says that an index stays a small whole number, which is else checked at every sum.
 */
function addFourTaps(
  taps: Float64Array,
  k: number,
  input: Float64Array,
  left: number,
  output: Pairs,
  count: number,
): void {
  const a = taps[k] ?? 0
  const b = taps[k + 1] ?? 0
  const c = taps[k + 2] ?? 0
  const d = taps[k + 3] ?? 0
  const { first, second, step } = output
  let toFirst = output.firstStart
  let toSecond = output.secondStart
  let nextLeft = left - k + 1
  let nextRight = left + k + 4
  let l4 = input[nextLeft - 4] ?? 0
  let l3 = input[nextLeft - 3] ?? 0
  let l2 = input[nextLeft - 2] ?? 0
  let l1 = input[nextLeft - 1] ?? 0
  let r1 = input[nextRight - 3] ?? 0
  let r2 = input[nextRight - 2] ?? 0
  let r3 = input[nextRight - 1] ?? 0
  for (let n = 0; n < count; n += 2) {
    const r4 = input[nextRight] ?? 0
    first[toFirst] = (first[toFirst] ?? 0) + (a * (l1 + r1) + b * (l2 + r2)) + (c * (l3 + r3) + d * (l4 + r4))
    const l0 = input[nextLeft] ?? 0
    const r5 = input[(nextRight + 1) | 0] ?? 0
    second[toSecond] =
      (second[toSecond] ?? 0) + (a * (l0 + r2) + b * (l1 + r3)) + (c * (l2 + r4) + d * (l3 + r5))
    l4 = l2
    l3 = l1
    l2 = l0
    l1 = input[(nextLeft + 1) | 0] ?? 0
    r1 = r3
    r2 = r4
    r3 = r5
    nextLeft = (nextLeft + 2) | 0
    nextRight = (nextRight + 2) | 0
    toFirst = (toFirst + step) | 0
    toSecond = (toSecond + step) | 0
  }
}
