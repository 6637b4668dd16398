import { describe, expect, it } from 'vitest'
import { levelHistogram, shareAbove } from '../../../src/core'

const level = { hopFrames: 240, levelDbfs: Float32Array.of(-120, -61, -60, -59.5, -20.25, -0.5, 0, 3) }

describe('the histogram of a level', () => {
  it('counts the hops in each bin as shares of those that are not silent', () => {
    const { shares } = levelHistogram(level, -60, 0, 20)
    expect([...shares]).toEqual([2 / 7, 1 / 7, 1 / 7])
  })

  it('of silence is empty', () => {
    const silent = { hopFrames: 240, levelDbfs: new Float32Array(9).fill(-120) }
    expect([...levelHistogram(silent, -60, 0, 30).shares]).toEqual([0, 0])
    expect(shareAbove(silent, -60)).toBe(0)
  })
})

it('the share above a threshold is of the hops that are not silent, and does not count those at it', () => {
  expect(shareAbove(level, -60)).toBeCloseTo(5 / 7, 12)
  expect(shareAbove(level, 0)).toBeCloseTo(1 / 7, 12)
})
