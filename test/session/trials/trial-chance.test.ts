import { describe, expect, it } from 'vitest'
import { drawOrder } from '../../../src/core'
import { randomBit } from '../../../src/session/trials/trials'
import { runsZ, shareZ } from '../../core/study/blind-trial-runs'

/** A fair source is further off than this in fewer than 1 of a million looks. */
const VERY_FAR = 5

describe('randomBit()', () => {
  it('is fair and free of runs over 10,000 draws of an order (Wald and Wolfowitz 1940)', () => {
    const order = drawOrder(10_000, randomBit)
    expect(Math.abs(runsZ(order))).toBeLessThan(VERY_FAR)
    expect(Math.abs(shareZ(order))).toBeLessThan(VERY_FAR)
  })
})
