import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type SpectrogramTile, TILE_COLUMNS, tileHopFor } from '../../../../src/core'
import { tilePieces } from '../../../../src/view/take/spectrogram/tile-pieces'

const FRAMES = 4 * 60 * 48_000
const levels = new Uint8Array(1)
const name = ({ hopFrames, index }: SpectrogramTile) => `${hopFrames} ${index}`

const views = fc
  .record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    zoom: fc.double({ min: 0, max: 12, noNaN: true }),
    width: fc.integer({ min: 50, max: 4800 }),
  })
  .map(({ at, zoom, width }) => {
    const length = FRAMES / 2 ** zoom
    const from = at * (FRAMES - length)
    return { view: { from, to: from + length }, width, hopFrames: tileHopFor(length / width) }
  })

describe('the pieces of a spectrogram', () => {
  it('cover what is seen from edge to edge, each place once, a few tiles in all', () => {
    fc.assert(
      fc.property(views, ({ view, width, hopFrames }) => {
        const pieces = tilePieces(view, width, FRAMES, hopFrames, () => levels)
        expect([pieces[0]?.left, pieces.at(-1)?.right]).toEqual([0, width])
        for (const [k, piece] of pieces.entries()) {
          if (k > 0) expect(piece.left).toBe(pieces[k - 1]?.right)
          expect(piece.fromColumn).toBeGreaterThanOrEqual(0)
          expect(piece.toColumn).toBeLessThanOrEqual(TILE_COLUMNS)
          expect(piece.toColumn).toBeGreaterThan(piece.fromColumn)
        }
        expect(pieces.length).toBeLessThanOrEqual(width / TILE_COLUMNS + 2)
      }),
    )
  })

  it('show the same time, whether drawn from the tile itself or from a coarser one', () => {
    fc.assert(
      fc.property(views, fc.integer({ min: 1, max: 4 }), ({ view, width, hopFrames }, coarser) => {
        const from = (hop: number) =>
          tilePieces(view, width, FRAMES, hopFrames, (tile) => (tile.hopFrames === hop ? levels : undefined))
        const own = from(hopFrames)
        const stretched = from(hopFrames * 2 ** coarser)
        fc.pre(hopFrames * 2 ** coarser <= 65_536)
        expect(stretched.map(({ left, right }) => [left, right])).toEqual(
          own.map(({ left, right }) => [left, right]),
        )
        for (const [k, { fromColumn, toColumn }] of stretched.entries()) {
          const columns = (own[k]?.toColumn ?? 0) - (own[k]?.fromColumn ?? 0)
          expect(toColumn - fromColumn).toBeCloseTo(columns / 2 ** coarser, 6)
        }
      }),
    )
  })

  it('leave out what nothing is known of', () => {
    const known = new Set([name({ hopFrames: 2048, index: 1 }), name({ hopFrames: 4096, index: 1 })])
    const view = { from: 0, to: 4 * 2048 * TILE_COLUMNS }
    const pieces = tilePieces(view, 400, FRAMES, 2048, (tile) => (known.has(name(tile)) ? levels : undefined))
    expect(
      pieces.map(({ left, right, fromColumn, toColumn }) => [left, right, fromColumn, toColumn]),
    ).toEqual([
      [100, 200, 0, 512],
      [200, 300, 0, 256],
      [300, 400, 256, 512],
    ])
  })
})
