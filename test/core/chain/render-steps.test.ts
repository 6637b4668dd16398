import { describe, expect, it } from 'vitest'
import { chainOf, finished, renderChain, renderSteps } from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { noise } from '../../setup/signals'

const sound = noise(48_000, 0.2, 2, 1, () => 0.3)
const chain = chainOf([
  stageWith('equaliser', {}),
  stageWith('compressor', {}),
  stageWith('gain', { gainDb: 1 }),
])

describe('renderSteps(sound, chain)', () => {
  it('tells its progress, rising to 1, and can be abandoned at any step', () => {
    const steps = renderSteps(sound, chain, { blockFrames: 1000 })
    const shares = [...steps]
    expect(shares).toEqual(shares.toSorted((a, b) => a - b))
    expect(shares.at(-1)).toBe(1)
    const abandoned = renderSteps(sound, chain, { blockFrames: 1000 })
    abandoned.next()
    expect(abandoned.next().done).toBe(false)
  })

  it('takes a step for each piece of a long sound that it copies', () => {
    const long = { sampleRate: 48_000, channels: [new Float32Array(3 * 2 ** 20)] }
    const nothing = chainOf([])
    // Once in, to work on, and once out.
    expect([...renderSteps(long, nothing)]).toHaveLength(6)
    expect(finished(renderSteps(long, nothing)).sound.channels).toEqual(
      renderChain(long, nothing).sound.channels,
    )
  })
})
