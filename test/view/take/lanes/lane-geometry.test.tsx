import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { plain } from '../../../../src/core'
import { loudnessPath, loudnessRange, loudnessTicks } from '../../../../src/view/take/lanes/loudness-geometry'
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
import { deepestOf, traceTicks, traceY } from '../../../../src/view/take/trace/trace-scale'

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

  it('has labels in steps of 6 dB that touch neither one another nor the lane beneath', () => {
    expect(traceTicks(12, 24)).toEqual([{ y: 0.5, label: '0' }])
    expect(traceTicks(12, 40).map(({ label }) => label)).toEqual(['0', '−6'])
    expect(traceTicks(18, 50).map(({ label }) => label)).toEqual(['0', '−6', '−12'])
    expect(traceTicks(36, 40).map(({ label }) => label)).toEqual(['0', '−12', '−24'])
  })

  it('marks its maximum where it occurs: in the first hop that is deepest', () => {
    const gainDb = Float32Array.of(0, -2, -9, -9, 0)
    expect(deepestOf({ hopFrames: 128, gainDb })).toEqual({ frame: 2.5 * 128, gainDb: -9 })
    expect(deepestOf({ hopFrames: 128, gainDb: new Float32Array(4) })).toBeNull()
    expect([traceY(0, 12, 41), traceY(-6, 12, 41), traceY(-20, 12, 41)]).toEqual([0.5, 20.5, 40.5])
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

  it('reaches over all that is above the gate, in whole LUFS', () => {
    const voice = series([Number.NaN, -22.4, -17.1, -19.8, -25.9])
    expect(loudnessRange([voice])).toEqual({ lowLufs: -26, highLufs: -17 })
    expect(loudnessRange([voice, series([-30.2, -28])])).toEqual({ lowLufs: -31, highLufs: -17 })
  })

  it('is not stretched by what the gate leaves out', () => {
    // ITU-R BS.1770-5: 10 LU below the average of all that is above -70 LUFS. Of four values at -20, that is -30 but for
    // the little that the quiet ones take from the average.
    expect(loudnessRange([series([-20, -20, -20, -20, -45, -68, Number.NaN])])).toEqual({
      lowLufs: -26,
      highLufs: -20,
    })
    expect(loudnessRange([series([-20, -20, -20, -20, -30.8])]).lowLufs).toBe(-31)
  })

  it('has room for 6 LU at least, and for a voice where nothing is measurable', () => {
    expect(loudnessRange([series([-18.2, -18.4])])).toEqual({ lowLufs: -24, highLufs: -18 })
    expect(loudnessRange([series([Number.NaN])])).toEqual({ lowLufs: -30, highLufs: -18 })
  })

  it('loses nothing above its gate, whatever the sides are', () => {
    const values = fc.array(fc.double({ min: -69, max: 0, noNaN: true }), { minLength: 5, maxLength: 40 })
    fc.assert(
      fc.property(values, values, (a, b) => {
        const { lowLufs, highLufs } = loudnessRange([series(a), series(b)])
        for (const side of [a, b]) {
          const power = side.reduce((sum, lufs) => sum + 10 ** (lufs / 10), 0) / side.length
          const gated = side.filter((lufs) => lufs > 10 * Math.log10(power) - 10)
          expect(Math.min(...gated)).toBeGreaterThanOrEqual(lowLufs - 1e-4)
          expect(Math.max(...side)).toBeLessThanOrEqual(highLufs + 1e-4)
        }
      }),
    )
  })

  it('has labels at round values that do not touch', () => {
    const ticks = loudnessTicks({ lowLufs: -29, highLufs: -17 }, 40)
    expect(ticks.map(({ label }) => label)).toEqual(['−18', '−24'])
    expect(loudnessTicks({ lowLufs: -29, highLufs: -17 }, 200).map(({ label }) => label)).toEqual(
      [-17, -18, -19, -20, -21, -22, -23, -24, -25, -26, -27, -28, -29].map((lufs) => plain(lufs, 0)),
    )
  })

  it('begins where the first window is full and has no hole behind it', () => {
    const range = { lowLufs: -42, highLufs: -18 }
    const values = series([Number.NaN, Number.NaN, Number.NaN, -20, Number.NaN, -60, -18])
    const path = loudnessPath(values, { from: 0, to: 6 }, 1, 60, 26, range)
    // 1 px for each LU: what is below the range, or the gate, lies on its foot.
    expect(path).toBe('M30,3L40,25L50,25L60,1')
    expect(loudnessPath(series([Number.NaN, Number.NaN]), { from: 0, to: 6 }, 1, 60, 26, range)).toBe('')
  })
})

describe('time ticks', () => {
  it('are round, in order, within the axis, and not crowded', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.005, max: 4000, noNaN: true }),
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
    const cycles = timeTicks({ from: 48_000, to: 48_242 }, 48_000, 600).map(({ label }) => label)
    expect(cycles).toEqual(['0:01.000', '0:01.001', '0:01.002', '0:01.003', '0:01.004', '0:01.005'])
  })
})
