import { area, line } from 'd3-shape'
import type { Spectrum } from '../../core'

/**
 * SVG path of a spectrum. Points below the lowest frequency or the lowest level that the scales show are left out
 * or held at the bottom; where there is nothing at all the line breaks.
 * @param x,y scales of a picture, with the domains they show
 */
export function spectrumPath(spectrum: Spectrum, x: Scale, y: Scale): string {
  return (
    line<Point>()
      .defined(([, db]) => !Number.isNaN(db))
      .x(([hz]) => x(hz))
      .y(([, db]) => y(db))
      .digits(1)(pointsWithin(spectrum, x, y)) ?? ''
  )
}

/** SVG path of the area between a spectrum and a level in dB, by default the lowest shown; else as {@link spectrumPath}. */
export function spectrumArea(spectrum: Spectrum, x: Scale, y: Scale, fromDb = y.domain()[0] ?? 0): string {
  return (
    area<Point>()
      .defined(([, db]) => !Number.isNaN(db))
      .x(([hz]) => x(hz))
      .y0(y(fromDb))
      .y1(([, db]) => y(db))
      .digits(1)(pointsWithin(spectrum, x, y)) ?? ''
  )
}

/** Frequency and level. */
type Point = readonly [hz: number, db: number]

function pointsWithin({ frequenciesHz, levelDb }: Spectrum, x: Scale, y: Scale): Point[] {
  const [lowestHz = 0, highestHz = Number.POSITIVE_INFINITY] = x.domain()
  const [lowestDb = Number.NEGATIVE_INFINITY] = y.domain()
  return Array.from(
    frequenciesHz,
    (hz, i): Point => [hz, Math.max(levelDb[i] ?? Number.NaN, lowestDb)],
  ).filter(([hz]) => hz >= lowestHz && hz <= highestHz)
}

interface Scale {
  (value: number): number
  domain(): number[]
}
