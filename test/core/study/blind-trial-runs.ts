import type { HiddenSide } from '../../../src/core'

/**
 * How far the number of runs in an order is from what chance gives, in standard deviations: below 0 the order
 * sticks, above 0 it alternates. Runs test: A. Wald, J. Wolfowitz, "On a Test Whether Two Samples are from the Same
 * Population", Annals of Mathematical Statistics 11(2), 147-162 (1940); mean 2 n1 n2 / n + 1, variance
 * (mean - 1)(mean - 2) / (n - 1).
 */
export function runsZ(order: readonly HiddenSide[]): number {
  const n = order.length
  const n1 = order.filter((side) => side === 'processed').length
  const runs = order.filter((side, index) => side !== order[index - 1]).length
  const mean = (2 * n1 * (n - n1)) / n + 1
  return (runs - mean) / Math.sqrt(((mean - 1) * (mean - 2)) / (n - 1))
}

/** How far the number of `with` is from half, in standard deviations of a fair coin. */
export function shareZ(order: readonly HiddenSide[]): number {
  const withs = order.filter((side) => side === 'processed').length
  return (withs - order.length / 2) / Math.sqrt(order.length / 4)
}
