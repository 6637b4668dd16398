import type { Biquad } from './biquad'

/** What sections write: a block of sound, or what passes between two groups of them, unrounded. */
export type Samples = Float32Array | Float64Array

/** Coefficients in a row: b0, b1 - a1 b0, b2 - a2 b0, a1, a2. */
export const DIRECT_STRIDE = 5

/**
 * Writes section `k` to `coefficients`, as the functions below read it: transposed direct form II with the output
 * `y = b0 x + s1` written out in its states. They then wait for no output, only for each other: half as long.
 *
 * Each function reads one kind of array: where the kind varies, engines check it at every sample, which costs a tenth of
 * the time; writing either kind costs nothing. Coefficients are the right factor of each product: those for which there
 * is no register are then read as part of the multiplication, which saves another tenth.
 */
export function prepareSection(coefficients: Float64Array, k: number, { b0, b1, b2, a1, a2 }: Biquad): void {
  const i = k * DIRECT_STRIDE
  coefficients[i] = b0
  coefficients[i + 1] = b1 - a1 * b0
  coefficients[i + 2] = b2 - a2 * b0
  coefficients[i + 3] = a1
  coefficients[i + 4] = a2
}

/**
 * Section `k` over `count` values of `input` from `inputStart` on, into `output` from `outputStart` on; both may be the
 * same. State is two numbers a section. `| 0` says that an index stays a small whole number, which is else checked at
 * every sum.
 */
export function runSection(
  input: Float32Array,
  inputStart: number,
  output: Samples,
  outputStart: number,
  c: Float64Array,
  k: number,
  state: Float64Array,
  count: number,
): void {
  const i = k * DIRECT_STRIDE
  const b0 = c[i] ?? 0
  const b1 = c[i + 1] ?? 0
  const b2 = c[i + 2] ?? 0
  const a1 = c[i + 3] ?? 0
  const a2 = c[i + 4] ?? 0
  let s1 = state[k * 2] ?? 0
  let s2 = state[k * 2 + 1] ?? 0
  for (let n = 0; n < count; n++) {
    const x = input[(inputStart + n) | 0] ?? 0
    const y = x * b0 + s1
    const s1Next = x * b1 + s2 - s1 * a1
    s2 = x * b2 - s1 * a2
    s1 = s1Next
    output[(outputStart + n) | 0] = y
  }
  state[k * 2] = s1
  state[k * 2 + 1] = s2
}

/** Sections `k` and `k + 1` in series: what one waits for itself the other works, so that two take little longer. */
export function runTwoSections(
  input: Float32Array,
  inputStart: number,
  output: Samples,
  outputStart: number,
  c: Float64Array,
  k: number,
  state: Float64Array,
  count: number,
): void {
  const i = k * DIRECT_STRIDE
  const b0 = c[i] ?? 0
  const b1 = c[i + 1] ?? 0
  const b2 = c[i + 2] ?? 0
  const a1 = c[i + 3] ?? 0
  const a2 = c[i + 4] ?? 0
  const d0 = c[i + 5] ?? 0
  const d1 = c[i + 6] ?? 0
  const d2 = c[i + 7] ?? 0
  const e1 = c[i + 8] ?? 0
  const e2 = c[i + 9] ?? 0
  let s1 = state[k * 2] ?? 0
  let s2 = state[k * 2 + 1] ?? 0
  let t1 = state[k * 2 + 2] ?? 0
  let t2 = state[k * 2 + 3] ?? 0
  for (let n = 0; n < count; n++) {
    const x = input[(inputStart + n) | 0] ?? 0
    const y = x * b0 + s1
    const s1Next = x * b1 + s2 - s1 * a1
    s2 = x * b2 - s1 * a2
    s1 = s1Next
    const z = y * d0 + t1
    const t1Next = y * d1 + t2 - t1 * e1
    t2 = y * d2 - t1 * e2
    t1 = t1Next
    output[(outputStart + n) | 0] = z
  }
  state[k * 2] = s1
  state[k * 2 + 1] = s2
  state[k * 2 + 2] = t1
  state[k * 2 + 3] = t2
}

/** Sections `k` to `k + 2` in series: as many as find room in the processor's registers. */
export function runThreeSections(
  input: Float32Array,
  inputStart: number,
  output: Samples,
  outputStart: number,
  c: Float64Array,
  k: number,
  state: Float64Array,
  count: number,
): void {
  const i = k * DIRECT_STRIDE
  const b0 = c[i] ?? 0
  const b1 = c[i + 1] ?? 0
  const b2 = c[i + 2] ?? 0
  const a1 = c[i + 3] ?? 0
  const a2 = c[i + 4] ?? 0
  const d0 = c[i + 5] ?? 0
  const d1 = c[i + 6] ?? 0
  const d2 = c[i + 7] ?? 0
  const e1 = c[i + 8] ?? 0
  const e2 = c[i + 9] ?? 0
  const f0 = c[i + 10] ?? 0
  const f1 = c[i + 11] ?? 0
  const f2 = c[i + 12] ?? 0
  const g1 = c[i + 13] ?? 0
  const g2 = c[i + 14] ?? 0
  let s1 = state[k * 2] ?? 0
  let s2 = state[k * 2 + 1] ?? 0
  let t1 = state[k * 2 + 2] ?? 0
  let t2 = state[k * 2 + 3] ?? 0
  let u1 = state[k * 2 + 4] ?? 0
  let u2 = state[k * 2 + 5] ?? 0
  for (let n = 0; n < count; n++) {
    const x = input[(inputStart + n) | 0] ?? 0
    const y = x * b0 + s1
    const s1Next = x * b1 + s2 - s1 * a1
    s2 = x * b2 - s1 * a2
    s1 = s1Next
    const z = y * d0 + t1
    const t1Next = y * d1 + t2 - t1 * e1
    t2 = y * d2 - t1 * e2
    t1 = t1Next
    const w = z * f0 + u1
    const u1Next = z * f1 + u2 - u1 * g1
    u2 = z * f2 - u1 * g2
    u1 = u1Next
    output[(outputStart + n) | 0] = w
  }
  state[k * 2] = s1
  state[k * 2 + 1] = s2
  state[k * 2 + 2] = t1
  state[k * 2 + 3] = t2
  state[k * 2 + 4] = u1
  state[k * 2 + 5] = u2
}
