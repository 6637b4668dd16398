import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { peakPyramid } from '../../../../src/core'
import { fullHeightDbfs, waveColumns, wavePath } from '../../../../src/view/take/lanes/wave-geometry'
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
        fc.integer({ min: 1, max: 4 }),
        (at, width, columnPx) => {
          const columns = waveColumns(click(at, 0.7), wholeTake(FRAMES), width, columnPx)
          expect(Math.max(...columns.map(({ max }) => max))).toBeCloseTo(0.7, 6)
        },
      ),
      { numRuns: 60 },
    )
  })

  it('shows a sample where it is', () => {
    const columns = waveColumns(click(25_000, -0.5), wholeTake(FRAMES), 1000, 1)
    const lowest = columns.reduce((a, b) => (b.min < a.min ? b : a))
    expect(Math.abs(lowest.x - 250)).toBeLessThan(2)
  })

  it('is drawn from no more columns than the picture has, however long the take', () => {
    const peaks = peakPyramid({ sampleRate: 48_000, channels: [new Float32Array(5_000_000)] })
    expect(waveColumns(peaks, wholeTake(5_000_000), 1200, 1).length).toBeLessThanOrEqual(1200)
  })

  it('leaves out what is not seen', () => {
    const columns = waveColumns(click(10, 0.9), { from: 50_000, to: 60_000 }, 500, 1)
    expect(Math.max(...columns.map(({ max }) => max))).toBe(0)
  })

  it('stays within the picture and shows silence as a hairline', () => {
    const path = wavePath(waveColumns(click(50_000, 1), wholeTake(FRAMES), 300, 1), 100, 1)
    const ys = [...path.matchAll(/,(-?[\d.]+)/g)].map(([, y]) => Number(y))
    expect(Math.min(...ys)).toBeGreaterThanOrEqual(0)
    expect(Math.max(...ys)).toBeLessThanOrEqual(100)
    expect(ys).toContain(49.5)
    expect(ys).toContain(50.5)
  })

  it('fills its lane at the next step of 6 dB above its peak, and near-silence is not blown up', () => {
    const heights = [-4.1, 0, 0.3, -6, -6.1, -80, null].map((peakDbtp) => fullHeightDbfs([peakDbtp]))
    expect(heights).toEqual([0, 0, 6, -6, -6, -36, 0])
  })

  it('leaves room for the loudest of all that it shows', () => {
    expect(fullHeightDbfs([-31, -29, -10])).toBe(-6)
    expect(fullHeightDbfs([-31, null, undefined])).toBe(-30)
    expect(fullHeightDbfs([])).toBe(0)
  })
})
