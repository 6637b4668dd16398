import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { dbToGain, peakPyramid, plain } from '../../../../src/core'
import {
  sampleColumns,
  sampleLines,
  waveColumns,
  wavePath,
} from '../../../../src/view/take/lanes/wave-geometry'
import { fullHeightDbfs, loudestOf, waveTicks } from '../../../../src/view/take/lanes/wave-scale'
import { wholeTake } from '../../../../src/view/take/time/time-view'

const FRAMES = 100_000

/** Silence with one sample that is not. */
function click(at: number, value: number) {
  const samples = new Float32Array(FRAMES)
  samples[at] = value
  return peakPyramid({ sampleRate: 48_000, channels: [samples] })
}

describe('the wave', () => {
  it('never loses a single loud sample, wherever it is and however wide the picture', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: FRAMES - 1 }),
        fc.integer({ min: 40, max: 3000 }),
        (at, width) => {
          const columns = waveColumns(click(at, 0.7), wholeTake(FRAMES), width)
          expect(Math.max(...columns.map(({ max }) => max))).toBeCloseTo(0.7, 6)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('shows a sample where it is', () => {
    const columns = waveColumns(click(25_000, -0.5), wholeTake(FRAMES), 1000)
    const lowest = columns.reduce((a, b) => (b.min < a.min ? b : a))
    expect(Math.abs(lowest.x - 250)).toBeLessThan(2)
  })

  it('is drawn from no more columns than the picture has, however long the take', () => {
    const peaks = peakPyramid({ sampleRate: 48_000, channels: [new Float32Array(5_000_000)] })
    expect(waveColumns(peaks, wholeTake(5_000_000), 1200).length).toBeLessThanOrEqual(1200)
  })

  it('leaves out what is not seen', () => {
    const columns = waveColumns(click(10, 0.9), { from: 50_000, to: 60_000 }, 500)
    expect(Math.max(...columns.map(({ max }) => max))).toBe(0)
  })

  it('stays within the picture and shows silence as a hairline', () => {
    const path = wavePath(waveColumns(click(50_000, 1), wholeTake(FRAMES), 300), 100, 1)
    const ys = [...path.matchAll(/,(-?[\d.]+)/g)].map(([, y]) => Number(y))
    expect(Math.min(...ys)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...ys)).toBeLessThanOrEqual(100)
    expect(ys).toContain(49.5)
    expect(ys).toContain(50.5)
  })

  it('is drawn from samples where they are there: each is seen, and nothing outside them', () => {
    const samples = Float32Array.from({ length: 400 }, (_, n) => Math.sin(n) * (n === 137 ? 1 : 0.1))
    const range = { from: 1000, channels: [samples, samples.map((value) => -value)] }
    const view = { from: 900, to: 1500 }
    const columns = sampleColumns(range, view, 120)
    expect(columns[0]?.x).toBeCloseTo(20.5)
    expect(columns.at(-1)?.x).toBeCloseTo(99.5)
    const loudest = loudestOf(columns)
    expect(Math.abs(loudest?.value ?? 0)).toBeCloseTo(Math.abs(Math.sin(137)), 6)
    expect(Math.abs((loudest?.x ?? 0) - 47.5)).toBeLessThan(1)
  })

  it('is a line from sample to sample through every channel where cycles are seen singly', () => {
    const range = { from: 10, channels: [Float32Array.of(0, 0.5, -0.5, 0), Float32Array.of(1, 1, 1, 1)] }
    const path = sampleLines(range, { from: 10, to: 13 }, 30, 102, 1)
    expect(path).toBe('M0,51L10,26L20,76L30,51M0,1L10,1L20,1L30,1')
  })

  it('goes one sample further than is seen at each end, so that it does not end in the picture', () => {
    const range = { from: 0, channels: [new Float32Array(100)] }
    const path = sampleLines(range, { from: 10.5, to: 20.5 }, 100, 100, 1)
    const xs = [...path.matchAll(/[ML](-?[\d.]+),/g)].map(([, x]) => Number(x))
    expect(xs[0]).toBeLessThanOrEqual(0)
    expect(xs.at(-1)).toBeGreaterThanOrEqual(100)
    expect(xs).toHaveLength(12)
  })
})

describe('the scale of the wave', () => {
  const seen = (peak: number) => [{ x: 0.5, min: -peak, max: 0 }]

  it('is filled at the next step of 2 dB above the peak that is seen, of both sides', () => {
    const dbfs = [-4.1, 0, 0.3, -6, -6.1, -47]
    expect(dbfs.map((peak) => fullHeightDbfs([seen(dbToGain(peak))]))).toEqual([-4, 0, 2, -6, -6, -46])
    expect(fullHeightDbfs([seen(dbToGain(-31)), seen(dbToGain(-9.5))])).toBe(-8)
  })

  it('does not blow up what is silent, and is at full scale where nothing is known', () => {
    expect([fullHeightDbfs([seen(0)]), fullHeightDbfs([seen(1e-6)]), fullHeightDbfs([[], []])]).toEqual([
      -72, -72, 0,
    ])
  })

  it('names the level that fills the lane and others that do not touch, nor the middle', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -36, max: 3 }).map((steps) => 2 * steps),
        fc.integer({ min: 60, max: 600 }),
        (dbfs, height) => {
          const ticks = waveTicks(dbfs, height)
          expect(ticks[0]).toEqual({ y: 1, label: plain(dbfs, 0) })
          for (const [i, { y, label }] of ticks.entries()) {
            const gain = dbToGain(Number(label.replace('−', '-')) - dbfs)
            expect(y).toBeCloseTo(height / 2 - gain * (height / 2 - 1), 6)
            if (i > 0) expect(y - (ticks[i - 1]?.y ?? 0)).toBeGreaterThanOrEqual(13)
            expect(height / 2 - y).toBeGreaterThan(13)
          }
        },
      ),
    )
    expect(waveTicks(-4, 100).map(({ label }) => label)).toEqual(['−4', '−12'])
  })

  it('has its maximum at the sample furthest from 0, the first of such', () => {
    const columns = [
      { x: 0.5, min: -0.1, max: 0.2 },
      { x: 1.5, min: -0.5, max: 0.4 },
      { x: 2.5, min: -0.5, max: 0.5 },
    ]
    expect(loudestOf(columns)).toEqual({ x: 1.5, value: -0.5 })
    expect(loudestOf([{ x: 0.5, min: 0, max: 0 }])).toBeNull()
  })
})
