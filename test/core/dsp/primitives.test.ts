import { describe, expect, it } from 'vitest'
import { MeanSquareWindow } from '../../../src/core/dsp/dynamics/mean-square-window'
import { mixGains } from '../../../src/core/dsp/dynamics/reduction-gain'
import { timeCoefficient } from '../../../src/core/dsp/dynamics/time-constant'
import { Ramp } from '../../../src/core/dsp/fades/ramp'
import { limitedFrequencyHz } from '../../../src/core/dsp/filters/biquad'
import { fastLog } from '../../../src/core/dsp/numeric/fast-log'
import {
  HalfBandDown,
  HalfBandUp,
  halfBandTaps,
  SampleBlock,
} from '../../../src/core/dsp/oversampling/half-band'
import { Oversampler } from '../../../src/core/dsp/oversampling/oversampler'
import { OVERSAMPLER_LATENCY_FRAMES, OVERSAMPLING } from '../../../src/core/dsp/oversampling/rate'
import { inOrder, type Pairs } from '../../../src/core/dsp/oversampling/symmetric-filter'
import { noise } from '../../setup/signals'
import { transformDb } from '../../setup/spectrum'

describe('timeCoefficient: exp(-1 / (tau fs)), Giannoulis, Massberg, Reiss (JAES 60(6), 2012)', () => {
  it.each([
    [0.1, 0.811936346151, 0.797114162946],
    [1, 0.979382181331, 0.977579425259],
    [5, 0.995842001845, 0.99547512086],
    [10, 0.997918835299, 0.997734995307],
    [50, 0.999583420127, 0.999546588083],
    [100, 0.999791688367, 0.999773268338],
    [250, 0.999916670139, 0.999909301166],
  ])('of %d ms at 48 and 44.1 kHz', (timeMs, at48k, at44k) => {
    expect(timeCoefficient(timeMs, 48_000)).toBeCloseTo(at48k, 11)
    expect(timeCoefficient(timeMs, 44_100)).toBeCloseTo(at44k, 11)
  })
})

describe('fastLog', () => {
  it('is right to 1e-13 over all levels, at the ends of its steps and where a 32-bit float rounds up', () => {
    for (let db = -740; db <= 760; db += 0.0173) {
      const x = 10 ** (db / 20)
      expect(Math.abs(fastLog(x) - Math.log(x))).toBeLessThan(1e-13)
    }
    for (const x of [1, 2, 0.5, 1 + 1 / 2048, 1 - 2 ** -53, 2 - 2 ** -30]) {
      expect(Math.abs(fastLog(x) - Math.log(x))).toBeLessThan(1e-13)
    }
  })
})

describe('mixGains', () => {
  const gainOf = (reductionDb: number, dry = 0, wet = 1) => {
    const mixed = new Float64Array(1)
    mixGains(Float64Array.of(reductionDb), 1, dry, wet, mixed)
    return mixed[0] ?? Number.NaN
  }

  it('is right to 2e-10 between the steps of its table and at its ends', () => {
    for (let db = 0; db <= 260; db += 0.00173) {
      expect(Math.abs(gainOf(db) / 10 ** (-db / 20) - 1)).toBeLessThan(2e-10)
    }
  })

  it('is 1 to the bit where nothing is held back, and next to nothing beyond its table', () => {
    expect(gainOf(0)).toBe(1)
    expect(gainOf(0, 1, -1)).toBe(0)
    for (const db of [260, 261, 1e9, Number.POSITIVE_INFINITY]) expect(gainOf(db)).toBeCloseTo(0, 12)
  })

  it('mixes: so much of what is not held back, so much of what is', () => {
    expect(gainOf(20, 0.25, 0.75)).toBeCloseTo(0.325, 9)
  })
})

describe('MeanSquareWindow', () => {
  it('equals the sum taken anew for every frame, and forgets: after a loud hour, silence reads as silence', () => {
    const [samples = new Float32Array(0)] = noise(48_000, 0.1, 1, 1, () => 3).channels
    const window = new MeanSquareWindow(100)
    const levels = Float64Array.from(samples, Math.abs)
    window.process(levels, levels.length)
    for (let n = 0; n < levels.length; n += 37) {
      let sum = 0
      for (let k = Math.max(0, n - 99); k <= n; k++) sum += (samples[k] ?? 0) ** 2
      expect(levels[n]).toBeCloseTo(Math.sqrt(sum / 100), 9)
    }
    const silence = new Float64Array(200)
    window.process(silence, 200)
    expect(silence.subarray(100).every((level) => level === 0)).toBe(true)
  })
})

describe('half-band filters', () => {
  it('have gain 1 at DC, 0.5 at a quarter of the higher rate, and stop what they must', () => {
    const taps = halfBandTaps(32, 10)
    const response = new Float64Array(127)
    response[63] = 0.5
    taps.forEach((tap, k) => {
      response[63 + 2 * k + 1] = tap
      response[63 - 2 * k - 1] = tap
    })
    // H(w) + H(pi - w) = 1, so ripple and stop-band are one and the same.
    expect(transformDb(response, 0, 1)).toBeCloseTo(0, 12)
    expect(transformDb(response, 0.25, 1)).toBeCloseTo(-6.0206, 4)
    // 127 taps, Kaiser beta 10: -106 dB from 0.6 of half the higher rate.
    for (let f = 0.3; f <= 0.5; f += 0.003) expect(transformDb(response, f, 1)).toBeLessThan(-100)
    for (let f = 0; f <= 0.2; f += 0.003) expect(Math.abs(transformDb(response, f, 1))).toBeLessThan(1e-4)
  })

  it('up and down again delay by twice (2 n - 1) frames of the higher rate', () => {
    const taps = halfBandTaps(8, 10)
    const doubled = new SampleBlock(0, 128)
    const up = new HalfBandUp(taps, 64, doubled)
    up.input.values[up.input.past] = 1
    up.process(64)
    expect(doubled.values.indexOf(Math.max(...doubled.values))).toBe(15)
    const output = new Float64Array(64)
    const down = new HalfBandDown(taps, 64, inOrder(output, 0))
    writePairs(down.phases, doubled.values.subarray(0, 128))
    down.process(64)
    expect(output.indexOf(Math.max(...output))).toBe(15)
  })
})

describe('Oversampler', () => {
  it('gives back what is below 0.4 of the rate, delayed by what it states', () => {
    const frames = 1024
    const input = Float32Array.from({ length: frames }, (_, n) => Math.sin(0.3 * n) + 0.5 * Math.sin(2.4 * n))
    const oversampler = new Oversampler(frames)
    oversampler.up(input, 0, frames)
    writePairs(oversampler.shaped, oversampler.raised.subarray(0, frames * OVERSAMPLING))
    oversampler.down(frames)
    for (let n = 300; n < frames; n++) {
      const delayed = input[n - OVERSAMPLER_LATENCY_FRAMES] ?? 0
      expect(Math.abs((oversampler.output[n] ?? 0) - delayed)).toBeLessThan(1e-4)
    }
  })
})

/** Writes `frames` where a filter takes its input from in pairs. */
function writePairs({ first, firstStart, second, secondStart, step }: Pairs, frames: Float64Array): void {
  for (let m = 0; 2 * m < frames.length; m++) {
    first[firstStart + m * step] = frames[2 * m] ?? 0
    second[secondStart + m * step] = frames[2 * m + 1] ?? 0
  }
}

describe('Ramp', () => {
  it('goes to its target in equal steps and stands there exactly', () => {
    const ramp = new Ramp(1)
    ramp.goTo(0.3, 7)
    expect(ramp.at(2)).toBeCloseTo(0.7, 12)
    ramp.pass(3)
    expect(ramp.now).toBeCloseTo(0.7, 12)
    expect(ramp.left).toBe(4)
    ramp.pass(4)
    expect(ramp.now).toBe(0.3)
    expect(ramp.left).toBe(0)
    expect(ramp.at(100)).toBe(0.3)
    ramp.goTo(5, 0)
    expect(ramp.now).toBe(5)
  })
})

describe('limitedFrequencyHz', () => {
  it('keeps filters below 0.49 of the rate and leaves the rest alone', () => {
    expect(limitedFrequencyHz(24_000, 44_100)).toBeCloseTo(21_609, 9)
    expect(limitedFrequencyHz(1000, 44_100)).toBe(1000)
  })
})
