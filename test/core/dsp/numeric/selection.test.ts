import fc from 'fast-check'
import { expect, it } from 'vitest'
import { nthSmallestSteps } from '../../../../src/core/dsp/numeric/selection'
import { finished } from '../../../../src/core/sound/steps'

it('finds what would stand at a place if the values were sorted, and nothing outside of them', () => {
  const few = fc.float64Array({ noNaN: true, maxLength: 60 })
  // Many equal values, as in silence.
  const equal = fc
    .array(fc.constantFrom(0, 1, 2), { maxLength: 60 })
    .map((values) => Float64Array.from(values))
  fc.assert(
    fc.property(fc.oneof(few, equal), (values) => {
      const sorted = values.toSorted()
      for (let index = -1; index <= values.length; index++) {
        // Zeros of either sign are equal: sorting tells them apart, comparing does not.
        const expected = sorted[index]
        const found = finished(nthSmallestSteps(values.slice(), index))
        expect(found === undefined ? found : found + 0).toBe(expected === undefined ? expected : expected + 0)
      }
    }),
  )
})
