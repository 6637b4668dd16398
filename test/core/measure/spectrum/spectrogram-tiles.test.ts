import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { coarserTile, TILE_COLUMNS, tileHopFor, tileRange, tilesIn } from '../../../../src/core/measure'

/** A range of a take that is seen, at a width of the picture. */
const views = fc
  .record({
    frames: fc.integer({ min: 1, max: 20 * 60 * 192_000 }),
    width: fc.integer({ min: 100, max: 2600 }),
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    zoom: fc.double({ min: 0, max: 15, noNaN: true }),
  })
  .map(({ frames, width, at, zoom }) => {
    const length = Math.max(1, frames / 2 ** zoom)
    const from = at * (frames - length)
    return { frames, width, range: { from, to: from + length } }
  })

describe('tiles of a spectrogram', () => {
  it('show any range of a take of twenty minutes, all of it, with a handful of them', () => {
    fc.assert(
      fc.property(views, ({ frames, width, range }) => {
        const tiles = tilesIn(range, tileHopFor((range.to - range.from) / width), frames)
        const covered = tiles.map(tileRange)
        expect(covered[0]?.from).toBeLessThanOrEqual(range.from)
        expect(covered.at(-1)?.to).toBeGreaterThanOrEqual(range.to)
        for (const [k, { from }] of covered.entries()) if (k > 0) expect(from).toBe(covered[k - 1]?.to)
        // Columns of at least a pixel, and a cut tile at either end; of 192 kHz the coarsest are finer than that.
        expect(tiles.length).toBeLessThanOrEqual(Math.max(width / TILE_COLUMNS, 3600 / TILE_COLUMNS) + 2)
      }),
    )
  })

  it('have columns of one to two pixels, as far as columns can be so long', () => {
    expect([0.5, 32, 33, 100, 1000, 50_000, 1e6].map(tileHopFor)).toEqual([
      64, 64, 64, 128, 1024, 65_536, 65_536,
    ])
  })

  it('lie within coarser ones, up to the coarsest', () => {
    const tile = { hopFrames: 1024, index: 7 }
    const coarser = coarserTile(tile)
    expect(coarser).toEqual({ hopFrames: 2048, index: 3 })
    expect(tileRange(coarser ?? tile)).toEqual({ from: 6 * 1024 * 512, to: 8 * 1024 * 512 })
    expect(coarserTile({ hopFrames: 65_536, index: 0 })).toBeNull()
  })
})
