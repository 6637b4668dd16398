import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { takeParts } from '../../../src/compute/pool/take-parts'
import { IncomingTake } from '../../../src/compute/worker/incoming-take'
import { SEED } from '../../setup/random-chains'
import { noise } from '../../setup/signals'

describe('a take in parts', () => {
  it('is whole with the last of them, however they are cut, and is not touched', () => {
    const take = noise(8000, 0.01, 2, 3, () => 0.5)
    const [left = new Float32Array()] = take.channels
    const before = left.slice()
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), (partFrames) => {
        const incoming = new IncomingTake(1, left.length, 2, take.sampleRate)
        const parts = [...takeParts(take, partFrames)]
        const whole = parts.map((part) => incoming.add(part))
        expect(whole.indexOf(true)).toBe(parts.length - 1)
        expect(incoming.sound).toEqual(take)
        for (const { channels } of parts) for (const samples of channels) samples.fill(0)
        expect(left).toEqual(before)
      }),
      { seed: SEED },
    )
  })
})
