import { describe, expect, it } from 'vitest'
import { type BandSettings, type BandShape, magnitudeDb } from '../../../src/core'
import { prototypeDb } from '../../setup/analogue-prototypes'
import { band } from '../../setup/chains'
import { SEED } from '../../setup/random-chains'
import { mulberry32 } from '../../setup/signals'
import { frequencies } from '../../setup/spectrum'

const RATES = [8000, 16_000, 22_050, 44_100, 48_000, 88_200, 96_000, 192_000]
/** A leap of the curve is heard as a click; this much more than the prototype moves goes unnoticed. */
const LARGEST_LEAP_DB = 0.3
const STEP = 1.001

/** Where a curve is looked at: over the whole range, and closely around its corner and the ends of its slope. */
function points({ frequencyHz, gainDb }: BandSettings, sampleRate: number): number[] {
  const ends = [-1, 0, 1].map((side) => frequencyHz * 10 ** ((side * gainDb) / 80))
  const around = ends.flatMap((hz) => [0.97, 0.99, 1, 1.01, 1.03].map((share) => share * hz))
  const limit = 0.4999 * sampleRate
  return [...frequencies(10, limit, 60), ...around.filter((hz) => hz < limit)]
}

/** How much further a step moves the curve than it moves the analogue prototype, dB. */
function leapDb(from: BandSettings, to: BandSettings, sampleRate: number): number {
  const at = points(from, sampleRate)
  const [before, after] = [from, to].map((settings) => magnitudeDb(settings, at, sampleRate, 'matched'))
  const analogue = ({ shape, frequencyHz, gainDb, q }: BandSettings, hz: number) =>
    prototypeDb(shape, hz / frequencyHz, gainDb, q)
  let [moved, prototypeMoved] = [0, 0]
  for (const [i, hz] of at.entries()) {
    moved = Math.max(moved, Math.abs((after?.[i] ?? Number.NaN) - (before?.[i] ?? Number.NaN)))
    prototypeMoved = Math.max(prototypeMoved, Math.abs(analogue(to, hz) - analogue(from, hz)))
  }
  return moved - prototypeMoved
}

describe(`a shelf turned by 0.1 % moves its curve smoothly (seed ${SEED})`, () => {
  const shapes: BandShape[] = ['high-shelf', 'low-shelf']
  it.each(shapes)('%s: frequency, q and gain, anywhere in their ranges, at any rate', (shape) => {
    const random = mulberry32(SEED)
    for (let run = 0; run < 2000; run++) {
      const sampleRate = RATES[run % RATES.length] ?? 48_000
      const highestHz = Math.min(24_000, 0.489 * sampleRate)
      // Half of them in the upper octaves, where a shelf meets half the sample rate.
      const share = random() < 0.5 ? random() : 1 - 0.15 * random()
      const from = band({
        shape,
        frequencyHz: 10 * (highestHz / 10) ** share,
        gainDb: 48 * random() - 24,
        q: 0.1 * 200 ** random(),
      })
      const steps: Partial<BandSettings>[] = [
        { frequencyHz: from.frequencyHz * STEP },
        { q: Math.min(20, from.q * STEP) },
        { gainDb: from.gainDb + 0.024 },
      ]
      for (const step of steps) {
        const leap = leapDb(from, { ...from, ...step }, sampleRate)
        expect(leap, JSON.stringify({ from, step, sampleRate })).toBeLessThan(LARGEST_LEAP_DB)
      }
    }
  })

  it('the worst that there were', () => {
    const worst: [number, number, number, number, Partial<BandSettings>][] = [
      [22_050, 4497.3, -20.3, 3.43, { gainDb: -20.324 }],
      [11_025, 2549.7, 16.6, 4.5, { frequencyHz: 2549.7 * STEP }],
      [48_000, 11_907.1, -20.9, 2.7, { q: 2.7 * STEP }],
      [44_100, 18_704.5, -17.3, 0.5, { gainDb: -17.276 }],
      // Where zeros were brought in before q was limited.
      [48_000, 3924.36, 23.63, 17.09, { frequencyHz: 3924.36 * STEP }],
    ]
    for (const [sampleRate, frequencyHz, gainDb, q, step] of worst) {
      const shelf = band({ shape: 'high-shelf', frequencyHz, gainDb, q })
      for (let turn = -50; turn < 50; turn++) {
        const from = { ...shelf, frequencyHz: frequencyHz * STEP ** turn }
        const to = { ...from, frequencyHz: from.frequencyHz * STEP }
        expect(leapDb(from, to, sampleRate)).toBeLessThan(LARGEST_LEAP_DB)
      }
      expect(leapDb(shelf, { ...shelf, ...step }, sampleRate)).toBeLessThan(LARGEST_LEAP_DB)
    }
  })
})
