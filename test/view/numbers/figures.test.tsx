import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { NOT_MEASURABLE, printDifference, printFigure } from '../../../src/view/numbers/figures'

const level = fc.integer({ min: -9000, max: 2000 }).map((hundredths) => hundredths / 100)
const read = (text: string) => Number(text.replace('−', '-'))

describe('figures', () => {
  it('add up in every line as they are printed', () => {
    fc.assert(
      fc.property(level, level, (without, withSide) => {
        const sum = read(printFigure(without)) + read(printDifference(without, withSide) ?? '')
        expect(sum).toBeCloseTo(read(printFigure(withSide)), 9)
      }),
    )
  })

  it('carry a sign where they are differences', () => {
    expect(printDifference(-20, -18.5)).toBe('+1.5')
    expect(printDifference(-18.5, -20)).toBe('−1.5')
  })

  it('say so where there is nothing to measure', () => {
    expect(printFigure(null)).toBe(NOT_MEASURABLE)
    expect(printDifference(null, -20)).toBeNull()
    expect(printDifference(-20, null)).toBeNull()
  })
})
