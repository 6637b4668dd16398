import { magnitudeDb, type StageDoc, type StaticCurve } from '../../../core'
import { HIGHEST_DBFS, lowestShownDbfs, staticCurvePoints } from '../../plot/static-curve'

/** The picture on a card is so many units wide and high, and stretched to its place. */
export const WIDTH = 96
export const HEIGHT = 42

const LOWEST_HZ = 20
const HIGHEST_HZ = 20_000
/** Filters have nothing to say above this share of the sample rate. */
const HIGHEST_SHARE_OF_RATE = 0.49
/** One for each two units. */
const POINTS = 49

/** The scale of a response reaches to plus and minus this, or to all of its boosts, dB. */
const USUAL_RANGE_DB = 12

/** Where a frequency stands, from 20 Hz to 20 kHz. */
export function frequencyX(hz: number): number {
  return (WIDTH * Math.log(hz / LOWEST_HZ)) / Math.log(HIGHEST_HZ / LOWEST_HZ)
}

/** Where a gain stands on a scale that reaches to plus and minus `rangeDb`. */
export function gainY(db: number, rangeDb = USUAL_RANGE_DB): number {
  return HEIGHT / 2 - (db / rangeDb) * (HEIGHT / 2 - 2)
}

/** The magnitude response of a stage as an SVG path. Deep cuts leave the picture. */
export function responsePath(stage: StageDoc, sampleRate: number): string {
  const highestHz = Math.min(HIGHEST_HZ, HIGHEST_SHARE_OF_RATE * sampleRate)
  const frequencies = Float64Array.from(
    { length: POINTS },
    (_, i) => LOWEST_HZ * (highestHz / LOWEST_HZ) ** (i / (POINTS - 1)),
  )
  const magnitudes = magnitudeDb(stage, frequencies, sampleRate)
  const rangeDb = Math.max(USUAL_RANGE_DB, ...magnitudes)
  return pathOf(
    Array.from(magnitudes, (db, i) => [frequencyX(frequencies[i] ?? 0), gainY(Math.max(db, -60), rangeDb)]),
  )
}

/** A level on the scales of a static curve, in and out. */
export function levelPoint(curve: StaticCurve, inDb: number, outDb: number): readonly [x: number, y: number] {
  const lowest = lowestShownDbfs(curve)
  const share = (db: number) => (db - lowest) / (HIGHEST_DBFS - lowest)
  return [WIDTH * share(inDb), HEIGHT - 2 - (HEIGHT - 4) * share(outDb)]
}

/** A static curve as an SVG path. */
export function staticCurvePath(curve: StaticCurve): string {
  return pathOf(staticCurvePoints(curve).map(([inDb, outDb]) => levelPoint(curve, inDb, outDb)))
}

/** Output against input, both from -1 to 1, as an SVG path. */
export function transferPath(outputAt: (input: number) => number): string {
  return pathOf(
    Array.from({ length: POINTS }, (_, i) => {
      const input = (2 * i) / (POINTS - 1) - 1
      return [(WIDTH * i) / (POINTS - 1), HEIGHT / 2 - outputAt(input) * (HEIGHT / 2 - 2)]
    }),
  )
}

function pathOf(points: readonly (readonly [x: number, y: number])[]): string {
  return `M${points.map(([x, y]) => `${x.toFixed(1)},${y.toFixed(1)}`).join('L')}`
}
