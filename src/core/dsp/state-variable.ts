import type { Biquad } from './biquad'

/**
 * A second-order section as what a state-variable filter is set by: where it turns, how damped, and the gains of
 * its high-passed, band-passed and low-passed parts, which add up to the input. Unlike coefficients, these can be
 * moved one by one or together without passing through a resonance that neither end has.
 */
export interface StateVariable {
  /** tan(w0 / 2), w0 the angle of the corner in radians per frame; above 0. */
  readonly g: number
  /** Damping, 1/q; above 0. */
  readonly k: number
  /** Gain at half the sample rate. */
  readonly high: number
  /** Gain of the part around the corner. */
  readonly band: number
  /** Gain at DC. */
  readonly low: number
}

/**
 * The state-variable filter that has the transfer function of a stable `section`.
 * Source of the filter: V. Zavalishin, "The Art of VA Filter Design", state-variable filter with trapezoidal
 * integrators. Derived here: its denominator is (1 + g k + g^2) z^2 + 2 (g^2 - 1) z + (1 - g k + g^2); comparing
 * coefficients gives g and k, comparing numerators at z = 1 and z = -1 the gains at both ends.
 */
export function stateVariableOf({ b0, b1, b2, a1, a2 }: Biquad): StateVariable {
  const atDc = 1 + a1 + a2
  const atNyquist = 1 - a1 + a2
  const g = Math.sqrt(atDc / atNyquist)
  const k = (2 * (1 - a2)) / (atNyquist * g)
  const high = (b0 - b1 + b2) / atNyquist
  const low = (b0 + b1 + b2) / atDc
  return { g, k, high, band: high + (b0 - b2 - high * (1 - a2)) / (1 - a2), low }
}

/** Numbers in a row that {@link runSection} reads: three of the integrators, three of the mix. */
export const RUN_STRIDE = 6

/** State whose squares sum below this (-400 dB) becomes 0, before it slows the processor down as subnormals. */
export const SILENCE_SQUARED = 1e-40

/** Writes to `run`, from `at` on, what {@link runSection} needs for a section. */
export function prepareSection(run: Float64Array, at: number, section: StateVariable): void {
  const { g, k, high, band, low } = section
  const scale = 1 / (1 + g * (g + k))
  run[at] = scale
  run[at + 1] = g * scale
  run[at + 2] = g * g * scale
  run[at + 3] = high
  run[at + 4] = k * (band - high)
  run[at + 5] = low - high
}

/** Section `k` of those prepared in `run`, over the first `count` values of `buffer`, in place. */
export function runSection(
  buffer: Float64Array,
  run: Float64Array,
  k: number,
  state: Float64Array,
  count: number,
): void {
  const i = k * RUN_STRIDE
  const f0 = run[i] ?? 0
  const f1 = run[i + 1] ?? 0
  const f2 = run[i + 2] ?? 0
  const m0 = run[i + 3] ?? 0
  const m1 = run[i + 4] ?? 0
  const m2 = run[i + 5] ?? 0
  let s1 = state[k * 2] ?? 0
  let s2 = state[k * 2 + 1] ?? 0
  for (let n = 0; n < count; n++) {
    const x = buffer[n] ?? 0
    const rest = x - s2
    const band = f0 * s1 + f1 * rest
    const low = s2 + f1 * s1 + f2 * rest
    s1 = 2 * band - s1
    s2 = 2 * low - s2
    if (s1 * s1 + s2 * s2 < SILENCE_SQUARED) s1 = s2 = 0
    buffer[n] = m0 * x + m1 * band + m2 * low
  }
  state[k * 2] = s1
  state[k * 2 + 1] = s2
}

/**
 * Sections `k` and `l` in series. Each section waits for its own last state; two in one loop wait at the same
 * time, which takes little longer than one.
 */
export function runTwoSections(
  buffer: Float64Array,
  run: Float64Array,
  k: number,
  l: number,
  state: Float64Array,
  count: number,
): void {
  const i = k * RUN_STRIDE
  const j = l * RUN_STRIDE
  const f0 = run[i] ?? 0
  const f1 = run[i + 1] ?? 0
  const f2 = run[i + 2] ?? 0
  const m0 = run[i + 3] ?? 0
  const m1 = run[i + 4] ?? 0
  const m2 = run[i + 5] ?? 0
  const g0 = run[j] ?? 0
  const g1 = run[j + 1] ?? 0
  const g2 = run[j + 2] ?? 0
  const n0 = run[j + 3] ?? 0
  const n1 = run[j + 4] ?? 0
  const n2 = run[j + 5] ?? 0
  let s1 = state[k * 2] ?? 0
  let s2 = state[k * 2 + 1] ?? 0
  let t1 = state[l * 2] ?? 0
  let t2 = state[l * 2 + 1] ?? 0
  for (let n = 0; n < count; n++) {
    const x = buffer[n] ?? 0
    const rest = x - s2
    const band = f0 * s1 + f1 * rest
    const low = s2 + f1 * s1 + f2 * rest
    s1 = 2 * band - s1
    s2 = 2 * low - s2
    if (s1 * s1 + s2 * s2 < SILENCE_SQUARED) s1 = s2 = 0
    const y = m0 * x + m1 * band + m2 * low
    const nextRest = y - t2
    const nextBand = g0 * t1 + g1 * nextRest
    const nextLow = t2 + g1 * t1 + g2 * nextRest
    t1 = 2 * nextBand - t1
    t2 = 2 * nextLow - t2
    if (t1 * t1 + t2 * t2 < SILENCE_SQUARED) t1 = t2 = 0
    buffer[n] = n0 * y + n1 * nextBand + n2 * nextLow
  }
  state[k * 2] = s1
  state[k * 2 + 1] = s2
  state[l * 2] = t1
  state[l * 2 + 1] = t2
}
