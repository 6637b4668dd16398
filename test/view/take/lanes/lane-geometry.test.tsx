import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { loudnessPath, loudnessRange } from '../../../../src/view/take/lanes/loudness-geometry'
import { timeTicks } from '../../../../src/view/take/lanes/time-ticks'
import { type TimeView, wholeTake } from '../../../../src/view/take/time/time-view'
import {
  type ColumnRange,
  columnsOf,
  type EdgePiece,
  edgePieces,
  fillColumns,
  pixelsOf,
  type TraceLayout,
  traceRangeDb,
} from '../../../../src/view/take/trace/trace-geometry'

const HOPS = 4000
const HOP_FRAMES = 128

function columnsFor(gainDb: Float32Array, view: TimeView, count: number): Float32Array {
  const columns = new Float32Array(count)
  fillColumns(columns, { hopFrames: HOP_FRAMES, gainDb }, view, { from: 0, to: count })
  return columns
}

/** The view of a part of a take of `HOPS`. */
const someView = fc
  .tuple(fc.double({ min: 0, max: 0.9, noNaN: true }), fc.double({ min: 0.001, max: 1, noNaN: true }))
  .map(([from, length]): TimeView => {
    const frames = HOPS * HOP_FRAMES
    return { from: from * frames, to: Math.min(1, from + length) * frames }
  })

const someLayout = fc.record<TraceLayout>({
  widthPx: fc.integer({ min: 20, max: 400 }),
  heightPx: fc.integer({ min: 24, max: 120 }),
  columnPx: fc.constantFrom(2, 4, 6),
  zeroPx: fc.integer({ min: 1, max: 3 }),
  linePx: fc.double({ min: 1, max: 6, noNaN: true }),
  rangeDb: fc.constantFrom(12, 18),
})

/** Top and bottom of the line on each pixel from left to right. */
function barsOf(pieces: readonly EdgePiece[]) {
  return pieces.flatMap(({ x, width, top, bottom }) =>
    Array.from({ length: width }, (_, i) => ({ x: x + i, top, bottom })),
  )
}

describe('a gain reduction lane', () => {
  it('shows the deepest reduction, however short it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: HOPS - 1 }), fc.integer({ min: 25, max: 1000 }), (at, count) => {
        const gainDb = new Float32Array(HOPS)
        gainDb[at] = -9
        const columns = columnsFor(gainDb, wholeTake(HOPS * HOP_FRAMES), count)
        expect(Math.min(...columns)).toBe(-9)
      }),
    )
  })

  it.each([167, 350, 1000])('shows it in the very last hop too, %d columns wide', (count) => {
    const gainDb = new Float32Array(HOPS)
    gainDb[HOPS - 1] = -9
    // The take may end within its last hop.
    expect(columnsFor(gainDb, wholeTake(HOPS * HOP_FRAMES - 100), count).at(-1)).toBe(-9)
  })

  it('reaches down 12 dB, or in steps of 6 as far as is needed', () => {
    expect([0, 11.9, 12.1, 18, 25].map(traceRangeDb)).toEqual([12, 12, 18, 18, 30])
  })

  it('hangs from the top: 0 dB at the upper edge, its range at the lower', () => {
    const layout = { widthPx: 8, heightPx: 40, columnPx: 2, zeroPx: 1, linePx: 1, rangeDb: 12 }
    const all = { from: 0, to: 8 }
    expect(edgePieces(Float32Array.of(0, 0, 0, 0), layout, all)).toEqual([
      { x: 0, width: 8, top: 0, bottom: 1 },
    ])
    expect(edgePieces(Float32Array.of(-12, -12, -30, -12), layout, all)).toEqual([
      { x: 0, width: 8, top: 39, bottom: 40 },
    ])
  })

  it('goes straight from the middle of one column to that of the next, through its deepest point', () => {
    const layout = { widthPx: 6, heightPx: 41, columnPx: 2, zeroPx: 1, linePx: 1, rangeDb: 10 }
    const bars = barsOf(edgePieces(Float32Array.of(0, -10, 0), layout, { from: 0, to: 6 }))
    expect(bars.map(({ top, bottom }) => [top, bottom])).toEqual([
      [0, 1],
      [0, 21],
      [20, 41],
      [20, 41],
      [0, 21],
      [0, 1],
    ])
  })

  it('has a line that never breaks, is as thick as it should be and stays in the picture', () => {
    const gains = fc.array(fc.float({ min: -20, max: 0, noNaN: true }), { minLength: 200, maxLength: 200 })
    fc.assert(
      fc.property(gains, someLayout, (gainDb, layout) => {
        const columns = Float32Array.from(gainDb).subarray(0, Math.ceil(layout.widthPx / layout.columnPx))
        const bars = barsOf(edgePieces(columns, layout, { from: 0, to: layout.widthPx }))
        expect(bars.map(({ x }) => x)).toEqual(Array.from({ length: layout.widthPx }, (_, x) => x))
        bars.forEach(({ top, bottom }, i) => {
          const before = bars[i - 1] ?? { top, bottom }
          expect(Math.min(bottom, before.bottom)).toBeGreaterThan(Math.max(top, before.top))
          expect(bottom - top).toBeGreaterThanOrEqual(layout.linePx - 1e-9)
          expect(top).toBeGreaterThanOrEqual((layout.zeroPx - layout.linePx) / 2 - 1e-9)
          expect(bottom).toBeLessThanOrEqual(layout.heightPx + 1e-9)
        })
      }),
    )
  })

  it('looks the same when only what came is worked out and drawn anew as when all of it is', () => {
    const pieces = fc.array(
      fc.tuple(fc.nat(HOPS - 1), fc.integer({ min: 1, max: 900 }), fc.float({ min: -12, max: 0 })),
      {
        minLength: 1,
        maxLength: 4,
      },
    )
    fc.assert(
      fc.property(pieces, someView, someLayout, (come, view, layout) => {
        const gainDb = Float32Array.from({ length: HOPS }, (_, i) => -6 + 6 * Math.sin(i / 30))
        const trace = { hopFrames: HOP_FRAMES, gainDb }
        const count = Math.ceil(layout.widthPx / layout.columnPx)
        const all: ColumnRange = { from: 0, to: layout.widthPx }
        const columns = columnsFor(gainDb, view, count)
        const drawn = barsOf(edgePieces(columns, layout, all))
        for (const [from, length, valueDb] of come) {
          gainDb.fill(valueDb, from, from + length)
          const news = columnsOf({ from, to: from + length }, HOP_FRAMES, view, count)
          fillColumns(columns, trace, view, news)
          for (const bar of barsOf(edgePieces(columns, layout, pixelsOf(news, layout)))) drawn[bar.x] = bar
        }
        expect(drawn).toEqual(barsOf(edgePieces(columnsFor(gainDb, view, count), layout, all)))
      }),
    )
  })

  it('draws no more of the picture than came', () => {
    const view = wholeTake(HOPS * HOP_FRAMES)
    const columns = columnsOf({ from: 1000, to: 2000 }, HOP_FRAMES, view, 400)
    expect(columns).toEqual({ from: 99, to: 201 })
    const layout = { widthPx: 800, heightPx: 32, columnPx: 2, zeroPx: 1, linePx: 1.2, rangeDb: 12 }
    expect(pixelsOf(columns, layout)).toEqual({ from: 195, to: 405 })
    const unseen = columnsOf({ from: 0, to: 100 }, HOP_FRAMES, { from: 1e5, to: 2e5 }, 400)
    expect(unseen.to).toBe(unseen.from)
  })
})

describe('a loudness lane', () => {
  const series = (values: number[]) => ({
    hopSeconds: 1,
    shortTermLufs: Float32Array.from(values),
    momentaryLufs: new Float32Array(values.length),
  })

  it('starts at the next 6 LU above the loudest and reaches down 24', () => {
    expect(loudnessRange([series([Number.NaN, -28]), series([-20, -19])])).toEqual({
      lowLufs: -42,
      highLufs: -18,
    })
  })

  it('reaches further down for a side that is much quieter, so that both are seen', () => {
    expect(loudnessRange([series([-16, -15.6]), series([-50, -45.6])])).toEqual({
      lowLufs: -60,
      highLufs: -12,
    })
  })

  it('leaves no room for a side that is silent', () => {
    const sounding = series([-16, -15.6])
    for (const silent of [series([Number.NaN]), series([-65, -70])])
      expect(loudnessRange([sounding, silent])).toEqual({ lowLufs: -36, highLufs: -12 })
  })

  it('has a gap where loudness is not measurable', () => {
    const range = { lowLufs: -42, highLufs: -18 }
    const values = series([Number.NaN, -20, -20, Number.NaN, -20, -20])
    const path = loudnessPath(values, { from: 0, to: 5 }, 1, 100, 40, range)
    expect(path.match(/M/g)).toHaveLength(2)
    expect(path.startsWith('M20,')).toBe(true)
  })
})

describe('time ticks', () => {
  it('are round, in order, within the axis, and not crowded', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 4000, noNaN: true }),
        fc.integer({ min: 200, max: 2000 }),
        (seconds, width) => {
          const ticks = timeTicks({ from: 0, to: seconds * 1000 }, 1000, width)
          expect(new Set(ticks.map(({ label }) => label)).size).toBe(ticks.length)
          const gaps = ticks.slice(1).map(({ x }, i) => x - (ticks[i]?.x ?? 0))
          for (const gap of gaps) expect(gap).toBeGreaterThan(79)
          for (const { x } of ticks) {
            expect(x).toBeGreaterThanOrEqual(0)
            expect(x).toBeLessThanOrEqual(width + 1e-6)
          }
        },
      ),
    )
  })

  it('show fractions only when zoomed in', () => {
    expect(timeTicks({ from: 0, to: 30_000 }, 1000, 600).map(({ label }) => label)).toEqual([
      '0:00',
      '0:05',
      '0:10',
      '0:15',
      '0:20',
      '0:25',
      '0:30',
    ])
    expect(timeTicks({ from: 0, to: 600_000 }, 1000, 1200).map(({ label }) => label)).toContain('4:00')
    expect(timeTicks({ from: 0, to: 1000 }, 1000, 600).map(({ label }) => label)).toContain('0:00.2')
  })
})
