import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { drawOrder, type HiddenSide } from '../../../src/core'
import { seededRandom } from '../../../src/core/dsp/numeric/random'
import { runsZ, shareZ } from './blind-trial-runs'

const DRAWS = 10_000
/** A fair source is further off than this once in 16 000 looks. */
const FAR = 4

function fairBit(seed: number): () => boolean {
  const random = seededRandom(seed)
  return () => random() < 0.5
}

describe('drawOrder(rounds, randomBit)', () => {
  it.each([1, 2, 3, 4, 5])('has as many runs as chance gives, and as many of each side, seed %i', (seed) => {
    const order = drawOrder(DRAWS, fairBit(seed))
    expect(order).toHaveLength(DRAWS)
    expect(Math.abs(runsZ(order))).toBeLessThan(FAR)
    expect(Math.abs(shareZ(order))).toBeLessThan(FAR)
  })

  it('is as fair across trials of 16: in every round, and from one round to the next', () => {
    const bit = fairBit(6)
    const trials = Array.from({ length: DRAWS }, () => drawOrder(16, bit))
    for (let round = 0; round < 16; round++) {
      const inThisRound = trials.flatMap((order) => order.slice(round, round + 1))
      expect(Math.abs(shareZ(inThisRound))).toBeLessThan(FAR)
    }
    expect(Math.abs(runsZ(trials.flat()))).toBeLessThan(FAR)
    // Evened-out orders would have eight of each: fair coins give that in 1 of 5 trials only.
    const even = trials.filter((order) => order.filter((side) => side === 'processed').length === 8)
    const share = 12870 / 65536
    const deviation = Math.sqrt((share * (1 - share)) / DRAWS)
    expect(Math.abs(even.length / DRAWS - share)).toBeLessThan(FAR * deviation)
  })

  it('hides exactly what the bits say', () => {
    fc.assert(
      fc.property(fc.array(fc.boolean(), { maxLength: 20 }), (bits) => {
        const left = [...bits]
        const order = drawOrder(bits.length, () => left.shift() ?? false)
        expect(order).toEqual(bits.map((bit): HiddenSide => (bit ? 'processed' : 'bypassed')))
      }),
    )
  })

  it.each([-1, 1.5, Number.NaN])('throws RangeError for %d rounds', (rounds) => {
    expect(() => drawOrder(rounds, () => true)).toThrow(RangeError)
  })
})

describe('the runs test', () => {
  it('sees orders that alternate, that stick, and that lean', () => {
    const bit = fairBit(7)
    let last = false
    const sticky = drawOrder(DRAWS, () => {
      if (bit() || bit()) return last
      last = !last
      return last
    })
    let turn = false
    const alternating = drawOrder(DRAWS, () => {
      turn = !turn
      return turn
    })
    expect(runsZ(sticky)).toBeLessThan(-FAR)
    expect(runsZ(alternating)).toBeGreaterThan(FAR)
    const random = seededRandom(8)
    expect(shareZ(drawOrder(DRAWS, () => random() < 0.53))).toBeGreaterThan(FAR)
  })
})
