import { type ScaleLinear, scaleLinear } from 'd3-scale'
import type { Spectrum } from '../../core'

/** How much of a spectrum the height of a plot shows, dB. */
const SPAN_DB = 80

/** The dBFS scale that shows the strongest parts of all `spectra`, from a whole ten down over 80 dB. */
export function spectrumScale(
  spectra: readonly Spectrum[],
  range: readonly [bottom: number, top: number],
): ScaleLinear<number, number> {
  const levels = spectra.flatMap(({ levelDb }) => Array.from(levelDb).filter(Number.isFinite))
  const top = levels.length === 0 ? 0 : Math.ceil(Math.max(...levels) / 10) * 10
  return scaleLinear([top - SPAN_DB, top], range)
}

/** Levels to write beside it, dBFS: every 20, the ends left out. */
export function spectrumTicks(scale: ScaleLinear<number, number>): number[] {
  const [lowest = 0, highest = 0] = scale.domain()
  return scale.ticks(SPAN_DB / 20).filter((db) => db > lowest && db < highest)
}
