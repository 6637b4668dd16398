import { describe, expect, it } from 'vitest'
import { finished, samplesOverSteps } from '../../../../src/core'
import { quantise } from '../../../../src/files/wav/quantise'
import { mulberry32 } from '../../../setup/signals'

describe('samples that do not fit', () => {
  it.each([16, 24])('are those that rounding to %i bits clips, to the last step', (bits) => {
    const step = 2 ** -(bits - 1)
    const random = mulberry32(bits)
    const edges = [-2, -1.5, -1, -0.5, 0, 0.5, 1].flatMap((steps) => [1 + steps * step, -1 + steps * step])
    const samples = Float32Array.from([...edges, ...Array.from({ length: 90_000 }, () => 4 * random() - 2)])
    const expected = quantise(samples, bits).clippedSamples
    expect(expected).toBeGreaterThan(30_000)
    const sound = { sampleRate: 8000, channels: [samples, samples] }
    expect(finished(samplesOverSteps(sound, bits))).toBe(2 * expected)
  })
})
