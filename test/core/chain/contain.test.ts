import { describe, expect, it } from 'vitest'
import { chainOf, renderChain } from '../../../src/core'
import { band, equaliserWith, monoOf } from '../../setup/chains'

describe('boosts stacked on boosts', () => {
  it('stay finite: five equalisers of twelve bands, each +24 dB at the same place', () => {
    const bands = Array.from({ length: 12 }, () =>
      band({ shape: 'bell', frequencyHz: 1000, gainDb: 24, q: 1 }),
    )
    const stages = Array.from({ length: 5 }, (_, k) => ({ ...equaliserWith(bands), id: `boost-${k}` }))
    const tone = monoOf(48000, 9600, (n) => Math.sin((2 * Math.PI * 1000 * n) / 48000))
    const [samples] = renderChain(tone, chainOf(stages)).sound.channels
    expect(samples?.every(Number.isFinite)).toBe(true)
  })
})
