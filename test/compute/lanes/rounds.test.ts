import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { Rounds } from '../../../src/compute/lanes/rounds'
import { TRACE_HOP_FRAMES } from '../../../src/core'
import { SEED } from '../../setup/random-chains'

const PIECE = 4 * TRACE_HOP_FRAMES

describe('rounds of a stretch', () => {
  it('cover it once each, in pieces, from wherever it begins', () => {
    fc.assert(
      fc.property(fc.nat(9000), fc.integer({ min: 1, max: 9000 }), fc.nat(12), (from, length, before) => {
        const rounds = new Rounds(PIECE)
        const stretch = { from, to: from + length }
        const given = rounds.round(stretch)
        for (let i = 0; i < before; i++) given.next()
        const pieces = [...rounds.round(stretch)].sort((a, b) => a.from - b.from)
        expect(pieces[0]?.from).toBe(stretch.from)
        expect(pieces.at(-1)?.to).toBe(stretch.to)
        for (const [i, { from, to }] of pieces.entries()) {
          expect(to - from).toBeLessThanOrEqual(PIECE)
          if (i > 0) expect(from).toBe(pieces[i - 1]?.to)
        }
      }),
      { seed: SEED },
    )
  })

  it('go on behind the last piece of a round that was given up', () => {
    const rounds = new Rounds(PIECE - 5)
    const stretch = { from: 0, to: 3 * PIECE }
    const begun: number[] = []
    for (let round = 0; round < 4; round++) begun.push(rounds.round(stretch).next().value?.from ?? Number.NaN)
    expect(begun).toEqual([0, PIECE, 2 * PIECE, 0])
    expect([...rounds.round(stretch)].map(({ from }) => from)).toEqual([PIECE, 2 * PIECE, 0])
  })
})
