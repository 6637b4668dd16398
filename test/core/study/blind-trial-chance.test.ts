import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { fewestRareRight, probabilityByChance, probabilityOfAtLeast } from '../../../src/core'

describe('probabilityByChance(right, rounds)', () => {
  // Binomial distribution with p = 1/2: exact counts of the 2^rounds equally likely runs.
  it.each([
    [12, 16, 2517 / 65536], // 0.0384
    [11, 16, 6885 / 65536], // 0.1051
    [8, 8, 1 / 256], // 0.0039
    [7, 8, 9 / 256], // 0.0352
    [9, 10, 11 / 1024], // 0.0107
    [8, 10, 56 / 1024], // 0.0547
    [15, 20, 21700 / 1048576], // 0.0207
    [5, 5, 1 / 32], // 0.0313
    [18, 25, 726206 / 33554432], // 0.0216
    [0, 16, 1],
  ])('%i of %i, to the last bit', (right, rounds, exact) => {
    expect(probabilityByChance(right, rounds)).toBe(exact)
  })

  it('is 1 less the probability of more wrong answers than that, at every length', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 1, max: 48 })
          .chain((n) => fc.tuple(fc.constant(n), fc.integer({ min: 1, max: n }))),
        ([rounds, right]) => {
          const fewer = probabilityByChance(rounds - right + 1, rounds)
          expect(probabilityByChance(right, rounds)).toBe(1 - fewer)
        },
      ),
    )
  })

  it.each([
    [-1, 16],
    [17, 16],
    [1.5, 16],
    [Number.NaN, 16],
    [0, 0],
    [1, 49],
    [1, 8.5],
  ])('throws RangeError for %d of %d', (right, rounds) => {
    expect(() => probabilityByChance(right, rounds)).toThrow(RangeError)
  })
})

describe('probabilityOfAtLeast(right, rounds, share)', () => {
  // Binomial distribution with p = 3/4: the power of runs of 10, 16 and 20.
  it.each([
    [12, 16, 0.63],
    [15, 20, 0.617],
    [9, 10, 0.244],
  ])('%i of %i for a listener who is right three times in four', (right, rounds, power) => {
    expect(probabilityOfAtLeast(right, rounds, 0.75)).toBeCloseTo(power, 3)
  })

  it('is sure where the listener is', () => {
    expect(probabilityOfAtLeast(16, 16, 1)).toBe(1)
    expect(probabilityOfAtLeast(1, 16, 0)).toBe(0)
    expect(() => probabilityOfAtLeast(1, 16, 1.1)).toThrow(RangeError)
  })
})

describe('fewestRareRight(rounds)', () => {
  // Binomial distribution with p = 1/2, first count whose upper tail is below 0.05.
  it.each([
    [5, 5],
    [8, 7],
    [10, 9],
    [12, 10],
    [16, 12],
    [20, 15],
    [25, 18],
  ])('of %i rounds is %i', (rounds, right) => {
    expect(fewestRareRight(rounds)).toBe(right)
  })

  it('is null where a run is too short for anything to be rare', () => {
    expect(fewestRareRight(4)).toBeNull()
  })
})
