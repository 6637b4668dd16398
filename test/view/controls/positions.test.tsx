import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { asPrinted, positionOf, stepped, valueAt } from '../../../src/view/controls/positions'
import { numberParameter, numberParameters } from './parameters'

const share = fc.double({ min: 0, max: 1, noNaN: true })

describe.each(numberParameters)('travel of %s', (_, parameter) => {
  it('goes from the smallest to the largest value', () => {
    expect(valueAt(parameter, 0)).toBe(parameter.min)
    expect(valueAt(parameter, 1)).toBe(parameter.max)
    expect(positionOf(parameter, parameter.min)).toBe(0)
    expect(positionOf(parameter, parameter.max)).toBe(1)
  })

  it('never goes back', () => {
    fc.assert(
      fc.property(share, share, (a, b) => {
        const [low, high] = a < b ? [a, b] : [b, a]
        expect(valueAt(parameter, low)).toBeLessThanOrEqual(valueAt(parameter, high))
      }),
    )
  })

  it('finds its way back to a value from its position', () => {
    fc.assert(
      fc.property(share, (position) => {
        const value = valueAt(parameter, position)
        expect(valueAt(parameter, positionOf(parameter, value))).toBe(value)
      }),
    )
  })

  it('moves by every step, in its direction and within the range', () => {
    fc.assert(
      fc.property(share, fc.constantFrom(-10, -1, -0.1, 0.1, 1, 10), (position, moves) => {
        const value = valueAt(parameter, position)
        const next = stepped(parameter, value, moves)
        const end = moves < 0 ? parameter.min : parameter.max
        if (value === end) expect(next).toBe(end)
        else expect(Math.sign(next - value)).toBe(Math.sign(moves))
        expect(next).toBeGreaterThanOrEqual(parameter.min)
        expect(next).toBeLessThanOrEqual(parameter.max)
      }),
    )
  })
})

describe('scales', () => {
  it('puts a frequency an octave up the same way along, wherever it is', () => {
    const frequency = numberParameter('band frequencyHz')
    const octave = positionOf(frequency, 200) - positionOf(frequency, 100)
    expect(positionOf(frequency, 8000) - positionOf(frequency, 4000)).toBeCloseTo(octave, 12)
  })

  it('puts 2:1 half way to infinity', () => {
    expect(positionOf(numberParameter('compressor ratio'), 2)).toBe(0.5)
  })

  it('steps out of infinity again', () => {
    const ratio = numberParameter('compressor ratio')
    expect(stepped(ratio, Number.POSITIVE_INFINITY, -1)).toBe(100)
  })

  it('does not leave a value with more digits than are printed where it is', () => {
    const q = numberParameter('band q')
    expect(stepped(q, Math.SQRT1_2, -0.1)).toBe(0.7)
    expect(asPrinted(q, Math.SQRT1_2)).toBe(0.71)
  })
})
