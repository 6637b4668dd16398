import { scaleLinear } from 'd3-scale'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { interpolateNumber, interpolateRound } from '../../src/build/numbers-only'

const number = fc.double({ min: -1e6, max: 1e6, noNaN: true })

describe('what stands in for d3-interpolate in the build', () => {
  it('goes from number to number with the same bits as the scales of the unit tests do', () => {
    fc.assert(
      fc.property(number, number, fc.double({ min: 0, max: 1, noNaN: true }), (from, to, share) => {
        const scale = scaleLinear([0, 1], [from, to])
        expect(interpolateNumber(from, to)(share)).toBe(scale(share))
        expect(interpolateRound(from, to)(share)).toBe(Math.round(scale(share)))
      }),
    )
  })

  it('refuses what is no number', () => {
    expect(() => interpolateNumber('red', 'blue')).toThrow(RangeError)
  })
})
