import { describe, expect, it } from 'vitest'
import { whiteNoise } from '../../../src/core/dsp/numeric/random'
import { faultSizes } from '../../../src/demo/faults/fault-sizes'
import { spoil } from '../../../src/demo/faults/faults'
import type { Segment } from '../../../src/demo/song/layout'
import { sampleRate } from '../../../src/demo/song/track'

const frames = 8 * sampleRate
const seconds = frames / sampleRate
const flushDenormals: Segment = {
  symbol: 'silence',
  startSeconds: 0,
  endSeconds: seconds,
  phrase: 0,
  afterSibilant: false,
}
const noise = whiteNoise(frames, 3)
const nothing = new Float64Array(frames)

describe('spoil', () => {
  it('does not go above its peak but by the noise it adds', () => {
    const spoilt = spoil({ body: noise, sibilance: nothing }, [flushDenormals], 1)
    const peak = spoilt.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
    expect(Math.abs(20 * Math.log10(peak) - faultSizes.voicePeakDbfs)).toBeLessThan(0.5)
  })
})
