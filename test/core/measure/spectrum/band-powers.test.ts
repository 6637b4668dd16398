import { describe, expect, it } from 'vitest'
import { bandPowers } from '../../../../src/core/measure/spectrum/band-powers'
import { inChannels, steppedSine } from '../../../setup/signals'

describe('bandPowers', () => {
  it.each([22_050, 48_000, 96_000])(
    'a sine of amplitude A has mean square A^2 / 2 on its side, at %i Hz',
    (sampleRate) => {
      for (const [hz, side] of [
        [1000, 'below'],
        [8000, 'above'],
      ] as const) {
        const powers = bandPowers(inChannels(sampleRate, steppedSine(sampleRate, [[0.2, -20]], hz), 1), 4000)
        const inside = powers[side].subarray(4, -4)
        const outside = powers[side === 'below' ? 'above' : 'below'].subarray(4, -4)
        for (const power of inside) expect(power).toBeCloseTo(0.005, 5)
        for (const power of outside) expect(power).toBeLessThan(1e-7)
      }
    },
  )

  it('gives one value for each 5 ms, and one for no sound at all', () => {
    expect(bandPowers(inChannels(48_000, new Float32Array(48_000), 1), 4000).above).toHaveLength(201)
    expect(bandPowers(inChannels(48_000, new Float32Array(0), 1), 4000).above).toEqual(Float64Array.of(0))
  })
})
