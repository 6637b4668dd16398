import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { loopWithin, withLoopEnd } from '../../../src/session/listening/loop'
import { SEED } from '../../setup/random-chains'

const RATE = 8000

describe('the loop', () => {
  it('gets another end and keeps the one it has where that lies on the right side; else it is 4 s long', () => {
    const loop = { from: 8000, to: 16_000 }
    expect(withLoopEnd(loop, 'from', 12_000, RATE)).toEqual({ from: 12_000, to: 16_000 })
    expect(withLoopEnd(loop, 'from', 16_000, RATE)).toEqual({ from: 16_000, to: 48_000 })
    expect(withLoopEnd(loop, 'to', 9000, RATE)).toEqual({ from: 8000, to: 9000 })
    expect(withLoopEnd(loop, 'to', 8000, RATE)).toEqual({ from: -24_000, to: 8000 })
    expect(withLoopEnd(null, 'from', 100, RATE)).toEqual({ from: 100, to: 32_100 })
  })

  it('lies within the take in whole frames and can be crossfaded at its seam, or is none', () => {
    const end = fc.double({ min: -1e5, max: 2e5, noNaN: true })
    fc.assert(
      fc.property(end, end, (from, to) => {
        const loop = loopWithin({ from, to }, 80_000, RATE)
        if (!loop) return
        expect([loop.from, loop.to].every(Number.isInteger)).toBe(true)
        expect(loop.from).toBeGreaterThanOrEqual(0)
        expect(loop.to).toBeLessThanOrEqual(80_000)
        expect(loop.to - loop.from).toBeGreaterThanOrEqual(0.1 * RATE)
      }),
      { seed: SEED },
    )
    expect(loopWithin({ from: 0, to: 799 }, 80_000, RATE)).toBeNull()
    expect(loopWithin({ from: -5, to: 90_000 }, 80_000, RATE)).toEqual({ from: 0, to: 80_000 })
    expect(loopWithin(null, 80_000, RATE)).toBeNull()
  })
})
