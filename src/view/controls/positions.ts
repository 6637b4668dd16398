import type { NumberParameter } from '../../core'

/**
 * Where on its control's travel a value stands, 0 (smallest) to 1 (largest): evenly, by equal ratios, or by equal
 * steps of 1 - 1/value, which brings Infinity within reach.
 */
export function positionOf(parameter: NumberParameter, value: number): number {
  const [low, high] = [travel(parameter, parameter.min), travel(parameter, parameter.max)]
  return Math.min(Math.max((travel(parameter, value) - low) / (high - low), 0), 1)
}

/** The value at a position of 0 to 1, as exact as it is printed. The inverse of {@link positionOf}. */
export function valueAt(parameter: NumberParameter, position: number): number {
  const [low, high] = [travel(parameter, parameter.min), travel(parameter, parameter.max)]
  const share = Math.min(Math.max(position, 0), 1)
  return asPrinted(parameter, untravel(parameter, low + share * (high - low)))
}

/** The nearest value that prints without loss, within the parameter's range. */
export function asPrinted(parameter: NumberParameter, value: number): number {
  const { min, max, digits, unit, displayFactor = 1 } = parameter
  const exact =
    unit === 'Hz' && value >= 1000
      ? Number(value.toPrecision(KILOHERTZ_DIGITS))
      : Number((value * displayFactor).toFixed(digits)) / displayFactor
  // Adding 0 makes a plain 0 of -0.
  return Math.min(Math.max(exact, min), max) + 0
}

/**
 * The value some small moves of the control away, fractions and negative numbers of moves allowed; always at least
 * one printed digit away, short of the ends.
 */
export function stepped(parameter: NumberParameter, value: number, moves: number): number {
  const { scale, step, min, max } = parameter
  const next =
    scale === 'linear'
      ? asPrinted(parameter, value + moves * step)
      : valueAt(parameter, positionOf(parameter, value) + moves * step)
  const direction = Math.sign(moves)
  if ((next - value) * direction > 0) return next
  const neighbour = asPrinted(parameter, value + direction * printedDigit(parameter, value))
  return Math.min(Math.max(neighbour, min), max)
}

/** Frequencies from 1 kHz up are printed to this many digits in all. */
const KILOHERTZ_DIGITS = 3

function printedDigit({ unit, digits, displayFactor = 1 }: NumberParameter, value: number): number {
  if (unit === 'Hz' && value >= 1000) return 10 ** (Math.floor(Math.log10(value)) - KILOHERTZ_DIGITS + 1)
  return 10 ** -digits / displayFactor
}

function travel({ scale }: NumberParameter, value: number): number {
  switch (scale) {
    case 'linear':
      return value
    case 'logarithmic':
      return Math.log(value)
    case 'reciprocal':
      return 1 - 1 / value
  }
}

function untravel({ scale }: NumberParameter, travelled: number): number {
  switch (scale) {
    case 'linear':
      return travelled
    case 'logarithmic':
      return Math.exp(travelled)
    case 'reciprocal':
      return 1 / (1 - travelled)
  }
}
