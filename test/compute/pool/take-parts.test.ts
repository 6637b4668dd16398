import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { takeParts } from '../../../src/compute/pool/take-parts'
import { IncomingTake } from '../../../src/compute/worker/incoming-take'
import { SEED } from '../../setup/random-chains'
import { noise } from '../../setup/signals'

describe('a take in parts', () => {
  it('is whole with the last of them, however they are cut, and is not touched', () => {
    const sound = noise(8000, 0.01, 2, 3, () => 0.5)
    const [left = new Float32Array()] = sound.channels
    const before = left.slice()
    const frames = left.length
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100 }), (partFrames) => {
        const { sampleRate } = sound
        const incoming = new IncomingTake({ type: 'take', hash: 'a', frames, channelCount: 2, sampleRate })
        const parts = [...takeParts({ hash: 'a', sound }, partFrames)]
        const come = parts.map((part) => incoming.add(part))
        expect(come.findIndex((take) => take !== null)).toBe(parts.length - 1)
        expect(come.at(-1)).toEqual({ hash: 'a', sound })
        for (const { channels } of parts) for (const samples of channels) samples.fill(0)
        expect(left).toEqual(before)
      }),
      { seed: SEED },
    )
  })
})
