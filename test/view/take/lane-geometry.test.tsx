import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { loudnessPath, loudnessRange } from '../../../src/view/take/loudness-geometry'
import { timeTicks } from '../../../src/view/take/time-ticks'
import { wholeTake } from '../../../src/view/take/time-view'
import { tracePaths, tracePoints, traceRangeDb } from '../../../src/view/take/trace-geometry'

const HOPS = 4000
const HOP_FRAMES = 128

describe('a gain reduction lane', () => {
  it('shows the deepest reduction, however short it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: HOPS - 1 }), fc.integer({ min: 50, max: 2000 }), (at, width) => {
        const gainDb = new Float32Array(HOPS)
        gainDb[at] = -9
        const points = tracePoints({ hopFrames: HOP_FRAMES, gainDb }, wholeTake(HOPS * HOP_FRAMES), width, 2)
        expect(Math.min(...points.map((point) => point.gainDb))).toBe(-9)
      }),
    )
  })

  it.each([333, 700, 1999])('shows it in the very last hop too, %d px wide', (width) => {
    const gainDb = new Float32Array(HOPS)
    gainDb[HOPS - 1] = -9
    // The take may end within its last hop.
    const view = wholeTake(HOPS * HOP_FRAMES - 100)
    const points = tracePoints({ hopFrames: HOP_FRAMES, gainDb }, view, width, 2)
    expect(points.at(-1)?.gainDb).toBe(-9)
  })

  it('reaches down 12 dB, or in steps of 6 as far as is needed', () => {
    expect([0, 11.9, 12.1, 18, 25].map(traceRangeDb)).toEqual([12, 12, 18, 18, 30])
  })

  it('hangs from the top: 0 dB at the upper edge, its range at the lower', () => {
    const { edge } = tracePaths(
      [
        { x: 0, gainDb: 0 },
        { x: 1, gainDb: -12 },
      ],
      40,
      12,
    )
    expect(edge).toBe('M0,0.5L1,39.5')
  })
})

describe('a loudness lane', () => {
  const series = (values: number[]) => ({
    hopSeconds: 1,
    shortTermLufs: Float32Array.from(values),
    momentaryLufs: new Float32Array(values.length),
  })

  it('starts at the next 6 LU above the loudest and reaches down 24', () => {
    expect(loudnessRange([series([Number.NaN, -31]), series([-20, -19])])).toEqual({
      lowLufs: -42,
      highLufs: -18,
    })
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
