import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { liveStretch } from '../../src/session/follow-stretch'
import { SEED } from '../setup/random-chains'

const RATE = 48_000
const MINUTES = 240 * RATE

describe('the stretch that follows the hand', () => {
  it('is what is seen, where that is short', () => {
    expect(liveStretch(null, 0, 25 * RATE, RATE)).toEqual({ from: 0, to: 25 * RATE })
    expect(liveStretch({ from: 100.4, to: 5 * RATE - 0.3 }, 0, MINUTES, RATE)).toEqual({
      from: 100,
      to: 5 * RATE,
    })
  })

  it('is the part from where it plays, where more is seen', () => {
    expect(liveStretch(null, 100 * RATE, MINUTES, RATE)).toEqual({ from: 100 * RATE, to: 125 * RATE })
    expect(liveStretch(null, MINUTES - 1, MINUTES, RATE)).toEqual({ from: 215 * RATE, to: MINUTES })
  })

  it('is the beginning of what is seen, where it plays elsewhere', () => {
    const seen = { from: 60 * RATE, to: 120 * RATE }
    expect(liveStretch(seen, 0, MINUTES, RATE)).toEqual({ from: 60 * RATE, to: 85 * RATE })
  })

  it('never leaves the take or what is seen, and starts and ends at frames', () => {
    const number = fc.double({ min: 0, max: MINUTES, noNaN: true })
    fc.assert(
      fc.property(number, number, fc.nat(MINUTES), (a, b, position) => {
        const seen = { from: Math.min(a, b), to: Math.max(a, b) }
        const { from, to } = liveStretch(seen, position, MINUTES, RATE)
        expect(Number.isInteger(from) && Number.isInteger(to)).toBe(true)
        expect(from).toBeGreaterThanOrEqual(Math.floor(seen.from))
        expect(to).toBeLessThanOrEqual(Math.ceil(seen.to))
        expect(to - from).toBeLessThanOrEqual(25 * RATE)
      }),
      { seed: SEED },
    )
  })
})
