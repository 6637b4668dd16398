import type { Biquad } from './biquad'

/** Coefficients in a row: b0 b1 b2 a1 a2. */
export const DIRECT_STRIDE = 5

/** State whose squares sum below this (-400 dB) becomes 0, before it slows the processor down as subnormals. */
export const SILENCE_SQUARED = 1e-40

/** Writes section `k` to `coefficients`, as the functions below read it. */
export function prepareSection(coefficients: Float64Array, k: number, { b0, b1, b2, a1, a2 }: Biquad): void {
  coefficients.set([b0, b1, b2, a1, a2], k * DIRECT_STRIDE)
}

/**
 * Section `k` over the first `count` values of `buffer`, in place: transposed direct form II, the fewest
 * operations for coefficients that stand still. State is two numbers a section.
 */
export function runSection(
  buffer: Float64Array,
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
    const x = buffer[n] ?? 0
    const y = b0 * x + s1
    s1 = b1 * x - a1 * y + s2
    s2 = b2 * x - a2 * y
    if (s1 * s1 + s2 * s2 < SILENCE_SQUARED) s1 = s2 = 0
    buffer[n] = y
  }
  state[k * 2] = s1
  state[k * 2 + 1] = s2
}

/**
 * Sections `k` and `l` in series. Each section waits for its own last output; two in one loop wait at the same
 * time, which takes little longer than one.
 */
export function runTwoSections(
  buffer: Float64Array,
  c: Float64Array,
  k: number,
  l: number,
  state: Float64Array,
  count: number,
): void {
  const i = k * DIRECT_STRIDE
  const j = l * DIRECT_STRIDE
  const b0 = c[i] ?? 0
  const b1 = c[i + 1] ?? 0
  const b2 = c[i + 2] ?? 0
  const a1 = c[i + 3] ?? 0
  const a2 = c[i + 4] ?? 0
  const d0 = c[j] ?? 0
  const d1 = c[j + 1] ?? 0
  const d2 = c[j + 2] ?? 0
  const e1 = c[j + 3] ?? 0
  const e2 = c[j + 4] ?? 0
  let s1 = state[k * 2] ?? 0
  let s2 = state[k * 2 + 1] ?? 0
  let t1 = state[l * 2] ?? 0
  let t2 = state[l * 2 + 1] ?? 0
  for (let n = 0; n < count; n++) {
    const x = buffer[n] ?? 0
    const y = b0 * x + s1
    s1 = b1 * x - a1 * y + s2
    s2 = b2 * x - a2 * y
    if (s1 * s1 + s2 * s2 < SILENCE_SQUARED) s1 = s2 = 0
    const z = d0 * y + t1
    t1 = d1 * y - e1 * z + t2
    t2 = d2 * y - e2 * z
    if (t1 * t1 + t2 * t2 < SILENCE_SQUARED) t1 = t2 = 0
    buffer[n] = z
  }
  state[k * 2] = s1
  state[k * 2 + 1] = s2
  state[l * 2] = t1
  state[l * 2 + 1] = t2
}
