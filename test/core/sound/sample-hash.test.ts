import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { finished, type Sound, sampleHashSteps } from '../../../src/core'
import { holds, SEED, sounds } from '../../setup/random-chains'
import { noise } from '../../setup/signals'

const hash = (sound: Sound) => finished(sampleHashSteps(sound))
const copyOf = ({ sampleRate, channels }: Sound): Sound => ({
  sampleRate,
  channels: channels.map((samples) => samples.slice()),
})

describe(`a name for a sound (seed ${SEED})`, () => {
  it('is the same for the same bits, wherever they lie, and another when one bit is', () => {
    const flipped = fc.tuple(sounds({ min: 1, max: 3000 }), fc.nat(), fc.nat(31))
    holds(flipped, 300, ([sound, place, bit]) => {
      const copy = copyOf(sound)
      expect(hash(copy)).toBe(hash(sound))
      const samples = copy.channels[place % copy.channels.length]
      if (!samples || samples.length === 0) return
      const words = new Uint32Array(samples.buffer)
      words[place % words.length] = (words[place % words.length] ?? 0) ^ (1 << bit)
      expect(hash(copy)).not.toBe(hash(sound))
    })
  })

  it('tells apart what has its samples in another order, channel, length or rate', () => {
    const sound = noise(8000, 0.1, 2, 3, () => 0.5)
    const [left = new Float32Array(), right = new Float32Array()] = sound.channels
    const others: readonly Sound[] = [
      sound,
      { ...sound, sampleRate: 44_100 },
      { ...sound, channels: [right, left] },
      { ...sound, channels: [left] },
      { ...sound, channels: [left.toReversed(), right] },
      { ...sound, channels: [left.subarray(0, -1), right.subarray(0, -1)] },
      { ...sound, channels: [Float32Array.of(...left, 0), Float32Array.of(...right, 0)] },
      { ...sound, channels: [Float32Array.of(...left, ...right)] },
    ]
    expect(new Set(others.map(hash)).size).toBe(others.length)
    expect(hash(sound)).toMatch(/^[0-9a-f]{32}$/)
  })

  it('comes in steps that can be left in between', () => {
    const sound = noise(48_000, 12, 1, 3, () => 0.5)
    const [one, two] = [sampleHashSteps(sound), sampleHashSteps(copyOf(sound))]
    let steps = 0
    for (let step = one.next(); !step.done; step = one.next(), steps++) two.next()
    expect(steps).toBeGreaterThan(3)
    expect(finished(two)).toBe(hash(sound))
  })
})
