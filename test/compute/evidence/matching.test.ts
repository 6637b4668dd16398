import { describe, expect, it } from 'vitest'
import { matchingGains } from '../../../src/compute/select/matching'
import { integratedLoudness, type Sound } from '../../../src/core'
import { noise } from '../../setup/signals'

const RATE = 8000
/** Loud for two seconds, then soft. */
const take = noise(RATE, 4, 1, 3, (at) => (at < 2 ? 0.4 : 0.1))

function louder(sound: Sound, gainDb: number): Sound {
  const gain = 10 ** (gainDb / 20)
  return { ...sound, channels: sound.channels.map((samples) => samples.map((x) => gain * x)) }
}

describe('matching', () => {
  it.each([6, -9])(
    'turns down whichever side is louder (the side with by %d dB), and not the other',
    (gainDb) => {
      const { bypassedDb, processedDb, measuredOver } = matchingGains(take, louder(take, gainDb), null)
      expect(processedDb).toBeCloseTo(Math.min(0, -gainDb), 3)
      expect(bypassedDb).toBeCloseTo(Math.min(0, gainDb), 3)
      expect(measuredOver).toBe('take')
    },
  )

  it('makes both sides equally loud over the loop, where the loop is long enough', () => {
    const levelled = noise(RATE, 4, 1, 3, () => 0.2)
    const loop = { from: 2 * RATE, to: 4 * RATE }
    const { bypassedDb, processedDb, measuredOver } = matchingGains(take, levelled, loop)
    const overLoop = (sound: Sound, gainDb: number) =>
      integratedLoudness({
        ...sound,
        channels: louder(sound, gainDb).channels.map((samples) => samples.subarray(loop.from, loop.to)),
      })
    expect(overLoop(take, bypassedDb)).toBeCloseTo(overLoop(levelled, processedDb) ?? Number.NaN, 6)
    expect([measuredOver, bypassedDb]).toEqual(['loop', 0])
    // Too short to measure.
    expect(matchingGains(take, levelled, { from: 0, to: RATE / 10 })).toMatchObject({
      measuredOver: 'take',
      processedDb: 0,
    })
  })

  it('uses what is known of the whole take, each figure for its own side', () => {
    const known = { bypassed: -20, processed: -14 }
    expect(matchingGains(take, take, null, known)).toEqual({
      bypassedDb: 0,
      processedDb: -6,
      measuredOver: 'take',
    })
  })

  it('leaves both alone where one cannot be measured', () => {
    const nothing = { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' }
    expect(matchingGains(take, louder(take, Number.NEGATIVE_INFINITY), null)).toEqual(nothing)
    expect(matchingGains(louder(take, Number.NEGATIVE_INFINITY), take, null)).toEqual(nothing)
  })
})
