import { line } from 'd3-shape'
import type { Plot } from './plot'

/** How far beyond its edge a curve is still followed, in shares of the range, so that it leaves at its own slope. */
const BEYOND = 2

/** SVG path of a magnitude response in dB, one value for each frequency of the plot. Clip it to the plot. */
export function responsePath(plot: Plot, magnitudesDb: Float64Array): string {
  const { rangeDb, frequenciesX } = plot
  const y = plot.y.copy().clamp(false)
  const edge = BEYOND * rangeDb
  return (
    line<number>()
      .x((_, i) => frequenciesX[i] ?? 0)
      .y((db) => y(Math.min(Math.max(db, -edge), edge)))
      .digits(1)(magnitudesDb) ?? ''
  )
}
