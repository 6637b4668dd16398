import { line } from 'd3-shape'
import type { Spectrum } from '../../core'

/**
 * SVG path of a spectrum. Points below the lowest frequency or the lowest level that the scales show are left out
 * or held at the bottom; where there is nothing at all the line breaks.
 * @param x,y scales of a picture, with the domains they show
 */
export function spectrumPath({ frequenciesHz, levelDb }: Spectrum, x: Scale, y: Scale): string {
  const [lowestHz = 0, highestHz = Number.POSITIVE_INFINITY] = x.domain()
  const [lowestDb = Number.NEGATIVE_INFINITY] = y.domain()
  const points = Array.from(frequenciesHz, (hz, i): [number, number] => [hz, levelDb[i] ?? Number.NaN])
  return (
    line<[number, number]>()
      .defined(([, db]) => !Number.isNaN(db))
      .x(([hz]) => x(hz))
      .y(([, db]) => y(Math.max(db, lowestDb)))
      .digits(1)(points.filter(([hz]) => hz >= lowestHz && hz <= highestHz)) ?? ''
  )
}

interface Scale {
  (value: number): number
  domain(): number[]
}
