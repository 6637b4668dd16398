import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type ChainDoc, chainOf, defaultStage, magnitudeDb, type StageDoc } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { fittingRangeDb } from '../../../src/view/response/fitting-range'
import { handlesOf } from '../../../src/view/response/handles'
import { NAME_PX, withNamePlaces } from '../../../src/view/response/name-places'
import { plotOf } from '../../../src/view/response/plot'

const RATE = 48_000

function placesOf(chain: ChainDoc, width = 560, height = 240) {
  const plot = plotOf(width, height, fittingRangeDb(chain), RATE)
  const magnitudes = magnitudeDb(chain, plot.frequenciesHz, RATE)
  return { plot, magnitudes, named: withNamePlaces(handlesOf(chain, plot, RATE), plot, magnitudes) }
}

/** Names that the combined curve runs through. */
function covered({ plot, magnitudes, named }: ReturnType<typeof placesOf>) {
  return named.filter(({ left, nameTop }) =>
    magnitudes.some((db, i) => {
      const x = plot.frequenciesX[i] ?? 0
      const y = plot.y.copy().clamp(false)(db)
      return Math.abs(x - left) < NAME_PX.width / 2 && Math.abs(y - nameTop) < NAME_PX.height / 2
    }),
  )
}

function bellsAt(bands: readonly { frequencyHz: number; gainDb: number }[]): StageDoc<'equaliser'> {
  const stage = defaultStage('equaliser')
  const [first] = stage.settings.bands
  if (!first) throw new RangeError('an equaliser begins with a band')
  return {
    ...stage,
    settings: { ...stage.settings, bands: bands.map((band) => ({ ...first, shape: 'bell', ...band })) },
  }
}

describe('names of bands', () => {
  it.each([
    [560, 240],
    [900, 420],
    [320, 220],
  ])('do not cover the curve of the demo’s chain, at %d x %d', (width, height) => {
    const places = placesOf(startingChain(), width, height)
    expect(places.named.length).toBeGreaterThan(2)
    expect(covered(places)).toEqual([])
  })

  it('do not cover the curve of a single band, whatever its gain, and stay within the plot', () => {
    const bells = fc.record({
      frequencyHz: fc.integer({ min: 40, max: 15_000 }),
      gainDb: fc.integer({ min: -24, max: 24 }),
    })
    fc.assert(
      fc.property(bells, (band) => {
        const places = placesOf(chainOf([bellsAt([band])]))
        expect(covered(places)).toEqual([])
        const [bottom = 0, top = 0] = places.plot.y.range()
        const [{ nameTop } = { nameTop: Number.NaN }] = places.named
        expect(nameTop - NAME_PX.height / 2).toBeGreaterThanOrEqual(top)
        expect(nameTop + NAME_PX.height / 2).toBeLessThanOrEqual(bottom)
      }),
    )
  })

  it('of bands at the same frequency do not lie over one another', () => {
    const { named } = placesOf(
      chainOf([
        bellsAt([
          { frequencyHz: 1000, gainDb: 3 },
          { frequencyHz: 1010, gainDb: 4 },
          { frequencyHz: 1020, gainDb: -3 },
        ]),
      ]),
    )
    for (const [i, a] of named.entries())
      for (const b of named.slice(i + 1))
        expect(Math.abs(a.nameTop - b.nameTop)).toBeGreaterThanOrEqual(NAME_PX.height)
  })
})
