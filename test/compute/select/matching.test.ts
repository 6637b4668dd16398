import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { MatchingGains } from '../../../src/compute/evidence'
import { matchingGains } from '../../../src/compute/select/matching'
import { excerpt, type FrameRange, integratedLoudness, renderChain, type Sound } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { SEED } from '../../setup/random-chains'
import { sideLoudness } from '../../setup/side-loudness'
import { mulberry32, noise } from '../../setup/signals'
import { sungDemo } from '../../setup/sung-demo'

const RATE = 8000
/** Loud for two seconds, then soft, and all of it above the gate of the measure. */
const take = noise(RATE, 4, 1, 3, (at) => (at < 2 ? 0.4 : 0.2))
const levelled = noise(RATE, 4, 1, 3, () => 0.2)

/** Half of what a comparison is matched to, LU. */
const CLOSE_LU = 0.05

function louder(sound: Sound, gainDb: number): Sound {
  const gain = 10 ** (gainDb / 20)
  return { ...sound, channels: sound.channels.map((samples) => samples.map((x) => gain * x)) }
}

/** How far apart the sides are over a loop when it is measured by itself, LU. */
function apart(bypassed: Sound, processed: Sound, { from, to }: FrameRange, gains: MatchingGains): number {
  const [a, b] = [bypassed, processed].map((sound) => integratedLoudness(excerpt(sound, from, to)))
  return Math.abs((a ?? Number.NaN) + gains.bypassedDb - (b ?? Number.NaN) - gains.processedDb)
}

function matching(bypassed: Sound, processed: Sound, loop: FrameRange | null = null) {
  return matchingGains(sideLoudness(bypassed), sideLoudness(processed), loop, bypassed.sampleRate)
}

describe('matching', () => {
  it.each([6, -9])(
    'turns down whichever side is louder (processed by %d dB), and not the other',
    (gainDb) => {
      const { bypassedDb, processedDb, measuredOver } = matching(take, louder(take, gainDb))
      expect(processedDb).toBeCloseTo(Math.min(0, -gainDb), 3)
      expect(bypassedDb).toBeCloseTo(Math.min(0, gainDb), 3)
      expect(measuredOver).toBe('take')
    },
  )

  it(`makes both sides equally loud over any loop long enough to measure (seed ${SEED})`, () => {
    const loops = fc.tuple(fc.nat(3 * RATE), fc.integer({ min: RATE / 2, max: 4 * RATE }))
    fc.assert(
      fc.property(loops, ([from, length]) => {
        const loop = { from, to: Math.min(4 * RATE, from + length) }
        const gains = matching(take, levelled, loop)
        expect(apart(take, levelled, loop, gains)).toBeLessThan(CLOSE_LU)
        expect(gains.measuredOver).toBe('loop')
        expect(Math.max(gains.bypassedDb, gains.processedDb)).toBe(0)
      }),
      { seed: SEED, numRuns: 60 },
    )
  })

  it('does so for 19 of 20 loops of the demo, short or long', () => {
    const { vocal } = sungDemo()
    const { sampleRate } = vocal
    const processed = renderChain(vocal, startingChain()).sound
    const [a, b] = [sideLoudness(vocal), sideLoudness(processed)]
    const random = mulberry32(3)
    // A block that stands at the gate may be above it in one of two measurements, and not in the other.
    const close = Array.from({ length: 100 }, () => {
      const from = Math.floor(random() * 12 * sampleRate)
      const loop = { from, to: from + Math.floor((0.5 + 5 * random()) * sampleRate) }
      return apart(vocal, processed, loop, matchingGains(a, b, loop, sampleRate)) < CLOSE_LU
    })
    expect(close.filter(Boolean).length).toBeGreaterThanOrEqual(95)
  })

  it('goes by the whole take where the loop is too short to measure', () => {
    expect(matching(take, levelled, { from: 0, to: RATE / 10 })).toEqual(matching(take, levelled))
  })

  it('leaves both alone where one cannot be measured', () => {
    const nothing = { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' }
    const silent = louder(take, Number.NEGATIVE_INFINITY)
    expect(matching(take, silent)).toEqual(nothing)
    expect(matching(silent, take)).toEqual(nothing)
    expect(matching(silent, take, { from: 0, to: 2 * RATE })).toEqual(nothing)
  })
})
