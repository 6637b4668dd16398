/**
 * What the scales of d3-scale need of d3-interpolate and d3-format while they map numbers to numbers: without colours,
 * dates and the printing of ticks, which the page's own figures do.
 */

/** @throws RangeError for what is no number */
export function interpolateNumber(from: unknown, to: unknown): (share: number) => number {
  if (typeof from !== 'number' || typeof to !== 'number')
    throw new RangeError('scales here map numbers to numbers')
  return (share) => from * (1 - share) + to * share
}

export const interpolate = interpolateNumber

export function interpolateRound(from: number, to: number): (share: number) => number {
  const between = interpolateNumber(from, to)
  return (share) => Math.round(between(share))
}

function leftOut(): never {
  throw new RangeError('left out of the build: see build/lean-d3.ts')
}

export const piecewise = leftOut
export const format = leftOut
export const formatPrefix = leftOut
export const formatSpecifier = leftOut
export const precisionFixed = leftOut
export const precisionPrefix = leftOut
export const precisionRound = leftOut
