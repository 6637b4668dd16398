import { describe, expect, it } from 'vitest'
import { whiteNoise } from '../../src/core/dsp/random'
import { faultSizes } from '../../src/demo/fault-sizes'
import { spoil } from '../../src/demo/faults'
import type { Segment } from '../../src/demo/layout'
import { sampleRate } from '../../src/demo/track'
import { powerAt, rmsOf } from './analysis'

const frames = 8 * sampleRate
const seconds = frames / sampleRate
const hush: Segment = {
  symbol: 'silence',
  startSeconds: 0,
  endSeconds: seconds,
  phrase: 0,
  afterSibilant: false,
}
const noise = whiteNoise(frames, 3)
const nothing = new Float64Array(frames)

/** Level of a third of an octave of noise around `centreHz`, dB, per Hz. */
function bandDb(samples: ArrayLike<number>, centreHz: number): number {
  const width = centreHz * (2 ** (1 / 6) - 2 ** (-1 / 6))
  const bins = 60
  let power = 0
  for (let bin = 0; bin < bins; bin += 1) {
    const frequencyHz = centreHz * 2 ** (-1 / 6) + ((bin + 0.5) / bins) * width
    power += powerAt(samples, sampleRate, 3 * sampleRate, frequencyHz, sampleRate)
  }
  return 10 * Math.log10(power / bins)
}

describe('spoil', () => {
  it('colours the voice by the proximity rise, the box resonance and the dull top together', () => {
    const spoilt = spoil({ body: noise, sibilance: nothing }, [hush], 1)
    const gainDb = (frequencyHz: number) => bandDb(spoilt, frequencyHz) - bandDb(noise, frequencyHz)
    // A cardioid at r metres from a point source rises by 10 log (1 + (c / (4 pi r f))^2): see its own test.
    const riseDb = (f: number) =>
      10 * Math.log10(1 + (343 / (4 * Math.PI * faultSizes.proximityMetres * f)) ** 2)
    const middle = gainDb(2000) - riseDb(2000)
    // The room's echoes ripple by about 1 dB, and a third of an octave averages over the top of the bell.
    expect(Math.abs(gainDb(100) - riseDb(100) - middle)).toBeLessThan(1.5)
    expect(
      Math.abs(gainDb(faultSizes.box.frequencyHz) - riseDb(310) - middle - faultSizes.box.gainDb),
    ).toBeLessThan(1.5)
    expect(Math.abs(gainDb(18_000) - middle - faultSizes.top.gainDb)).toBeLessThan(1.5)
    expect(Math.abs(gainDb(faultSizes.top.frequencyHz) - middle - faultSizes.top.gainDb / 2)).toBeLessThan(
      1.5,
    )
  })

  it('makes the sibilants stronger than the rest by what it says', () => {
    const half = frames / 2
    const body = noise.map((sample, i) => (i < half ? sample : 0))
    const sibilance = noise.map((sample, i) => (i < half ? 0 : sample))
    const spoilt = spoil({ body, sibilance }, [hush], 1)
    const ratio = rmsOf(spoilt, half + sampleRate, frames) / rmsOf(spoilt, 0, half - sampleRate)
    expect(Math.abs(20 * Math.log10(ratio) - faultSizes.sharpSibilanceDb)).toBeLessThan(0.3)
  })

  it('does not go above its peak but by the noise it adds', () => {
    const spoilt = spoil({ body: noise, sibilance: nothing }, [hush], 1)
    const peak = spoilt.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
    expect(Math.abs(20 * Math.log10(peak) - faultSizes.voicePeakDbfs)).toBeLessThan(0.5)
  })
})
