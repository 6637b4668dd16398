/** A value that is printed at the edge of a lane, with a line at its height. */
export interface ScaleTick {
  /** Down from the top of the lane, CSS pixels. */
  readonly y: number
  readonly label: string
}

/** Labels nearer to one another than this would touch, at the usual text size, CSS pixels. */
export const LABEL_PX = 13

/** The least of these steps between values whose labels do not touch; the largest of them where all do. */
export function stepFor(
  steps: readonly number[],
  rangeInUnits: number,
  heightPx: number,
  labelPx: number,
): number {
  const least = (labelPx / Math.max(1, heightPx)) * rangeInUnits
  return steps.find((step) => step >= least) ?? steps.at(-1) ?? rangeInUnits
}
