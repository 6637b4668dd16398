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

/**
 * What either form will put out next when nothing more comes in: its first output is `y0`, its second `y1`. Both
 * forms of a section hold the same past when these agree, so state is carried over through them.
 */
interface StateReading {
  readonly y0OfS1: number
  readonly y0OfS2: number
  readonly y1OfS1: number
  readonly y1OfS2: number
}

/** Squared sine of the angle below which two readings count as one: far below that of any two real poles. */
const PARALLEL = 1e-20

/** How the state of a state-variable filter is read, from its equations with no input. */
function readingOf({ g, k, high, band, low }: StateVariable): StateReading {
  const scale = 1 / (1 + g * (g + k))
  const ofBand = k * (band - high)
  const ofLow = low - high
  const y0OfS1 = scale * (ofBand + ofLow * g)
  const y0OfS2 = -scale * ofBand * g + ofLow * (1 - g * g * scale)
  return {
    y0OfS1,
    y0OfS2,
    y1OfS1: y0OfS1 * (2 * scale - 1) + y0OfS2 * 2 * g * scale,
    y1OfS2: -y0OfS1 * 2 * g * scale + y0OfS2 * (1 - 2 * g * g * scale),
  }
}

/**
 * Turns the two numbers at `at` from the state of `section` in transposed direct form II, whose next outputs are
 * s1 and s2 - a1 s1, into its state as the state-variable filter `filter`. Derived here.
 */
export function toStateVariable(
  state: Float64Array,
  at: number,
  { a1 }: Biquad,
  filter: StateVariable,
): void {
  const { y0OfS1, y0OfS2, y1OfS1, y1OfS2 } = readingOf(filter)
  const y0 = state[at] ?? 0
  const y1 = (state[at + 1] ?? 0) - a1 * y0
  const weight0 = y0OfS1 * y0OfS1 + y0OfS2 * y0OfS2
  const weight1 = y1OfS1 * y1OfS1 + y1OfS2 * y1OfS2
  const determinant = y0OfS1 * y1OfS2 - y0OfS2 * y1OfS1
  if (determinant * determinant > PARALLEL * weight0 * weight1) {
    state[at] = (y0 * y1OfS2 - y1 * y0OfS2) / determinant
    state[at + 1] = (y1 * y0OfS1 - y0 * y1OfS1) / determinant
  } else {
    // A pole and a zero cancel, as in a section of first order: the smallest state with this output will do.
    const perOutput = weight0 > 0 ? y0 / weight0 : 0
    state[at] = perOutput * y0OfS1
    state[at + 1] = perOutput * y0OfS2
  }
}

/** The way back of {@link toStateVariable}. */
export function toDirectForm(state: Float64Array, at: number, { a1 }: Biquad, filter: StateVariable): void {
  const { y0OfS1, y0OfS2, y1OfS1, y1OfS2 } = readingOf(filter)
  const s1 = state[at] ?? 0
  const s2 = state[at + 1] ?? 0
  const y0 = y0OfS1 * s1 + y0OfS2 * s2
  state[at] = y0
  state[at + 1] = y1OfS1 * s1 + y1OfS2 * s2 + a1 * y0
}
