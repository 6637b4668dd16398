import { DIRECT_STRIDE, type Samples } from './direct-form'

/**
 * Sections `k` and `k + 1` in series behind others: `count` values of what these put out, unrounded, into `output` from
 * `outputStart` on; both may be the same. The rest is as in `runTwoSections`, which reads sound instead.
 */
export function runTwoFurtherSections(
  between: Float64Array,
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
    const x = between[n] ?? 0
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
