import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { TRACE_HOP_FRAMES } from '../../src/core'
import { followed, type LiveTrace } from '../../src/session/live-trace'

const HOPS = 40
const FRAMES = HOPS * TRACE_HOP_FRAMES
const known = { hopFrames: TRACE_HOP_FRAMES, gainDb: new Float32Array(HOPS).fill(-1) }

const stretch = (firstHop: number, ...gainDb: number[]) => ({
  stageId: 'hold',
  firstHop,
  gainDb: Float32Array.from(gainDb),
})

describe('a live trace', () => {
  it('begins as a copy of what is known, all of it news', () => {
    const { trace, changed } = followed(undefined, known, [stretch(2, -5)], FRAMES)
    expect(trace.gainDb.subarray(1, 4)).toEqual(Float32Array.of(-1, -5, -1))
    expect(changed).toEqual({ from: 0, to: HOPS })
    expect(known.gainDb.every((gainDb) => gainDb === -1)).toBe(true)
  })

  it('is filled on, not made anew, and says which hops changed', () => {
    const first = followed(undefined, known, [stretch(0, -1)], FRAMES)
    const next = followed(first, known, [stretch(7, -2, -3), stretch(4, -4)], FRAMES)
    expect(next.trace).toBe(first.trace)
    expect(next.trace.gainDb.subarray(3, 10)).toEqual(Float32Array.of(-1, -4, -1, -1, -2, -3, -1))
    expect(next.changed).toEqual({ from: 4, to: 9 })
  })

  it('ends where the take does', () => {
    const first = followed(undefined, null, [stretch(HOPS + 1, -4)], FRAMES)
    const { trace } = followed(first, null, [stretch(HOPS - 1, -2, -3), stretch(HOPS + 1, -4)], FRAMES)
    expect(trace.gainDb.subarray(-2)).toEqual(Float32Array.of(0, -2))
  })

  it('never changes outside of what it says', () => {
    const stretches = fc.array(fc.tuple(fc.nat(HOPS + 5), fc.integer({ min: 1, max: 12 })), {
      minLength: 1,
      maxLength: 3,
    })
    fc.assert(
      fc.property(fc.array(stretches, { minLength: 1, maxLength: 5 }), (frames) => {
        let live: LiveTrace = followed(undefined, known, [stretch(0, -1)], FRAMES)
        frames.forEach((come, frame) => {
          const before = live.trace.gainDb.slice()
          const pieces = come.map(([firstHop, hops]) =>
            stretch(firstHop, ...new Array<number>(hops).fill(-2 - frame)),
          )
          live = followed(live, known, pieces, FRAMES)
          const { from, to } = live.changed
          expect(live.trace.gainDb.subarray(0, from)).toEqual(before.subarray(0, from))
          expect(live.trace.gainDb.subarray(to)).toEqual(before.subarray(to))
        })
      }),
    )
  })
})
