import { ebur128_true_peak_mono, ebur128_true_peak_stereo } from 'ebur128-wasm'
import { describe, expect, it } from 'vitest'
import { measure } from '../../src/core/measure'
import { within } from '../core/measure/loudness-oracle'
import { recordings } from '../setup/recordings'
import { inChannels, noise, repeated } from '../setup/signals'

const RATES = [44_100, 48_000]

/** EBU Tech 3341 (November 2023), Table 1, cases 15 to 23: +0.2 / -0.4 dB. */
function inTolerance(value: number | null, expected: number): void {
  expect(value).not.toBeNull()
  expect(value).toBeLessThanOrEqual(expected + 0.2)
  expect(value).toBeGreaterThanOrEqual(expected - 0.4)
}

describe('EBU Tech 3341, Table 1', () => {
  // Case, fraction of the sample rate, amplitude re full scale, phase in degrees, expected dBTP.
  const sines: [number, number, number, number, number][] = [
    [15, 4, 0.5, 0, -6],
    [16, 4, 0.5, 45, -6],
    [17, 6, 0.5, 60, -6],
    [18, 8, 0.5, 67.5, -6],
    [19, 4, 1.41, 45, 3],
  ]
  it.each(sines)(
    'case %i: fs/%i, amplitude %d, %d degrees: %d dBTP',
    (_, divisor, size, degrees, expected) => {
      // From 176.4 kHz the samples alone are read, which the cases, made for lower rates, are not meant for.
      for (const sampleRate of RATES.filter((rate) => rate < 88_200)) {
        const sine = Float32Array.from(
          { length: sampleRate },
          (_, i) => size * Math.sin((2 * Math.PI * i) / divisor + (degrees * Math.PI) / 180),
        )
        inTolerance(measure(inChannels(sampleRate, faded(sine, sampleRate), 2)).truePeakDbtp, expected)
      }
    },
  )

  it.each([0, 1, 2, 3])(
    'case 2%i: one period of fs/4 at full scale within fs/6 at half: 0 dBTP',
    (offset) => {
      const samples = faded(everyFourth(lowPassed(phaseContinuousBurst()), offset), 48_000)
      inTolerance(measure(inChannels(48_000, samples, 2)).truePeakDbtp, 0)
    },
  )
})

describe('ITU-R BS.1770-5, Annex 2', () => {
  it('oversamples 4 times below 88.2 kHz, twice from there, not at all from 176.4 kHz', () => {
    // The samples of fs/4 at 45 degrees lie 3.01 dB below its peak, half-way between them.
    const quarter = (sampleRate: number) =>
      measure(
        inChannels(
          sampleRate,
          Float32Array.from(
            { length: sampleRate },
            (_, i) => Math.SQRT2 * Math.sin((Math.PI * (2 * i + 1)) / 4),
          ),
          1,
        ),
      ).truePeakDbtp
    for (const sampleRate of [44_100, 48_000, 88_200, 96_000])
      expect(quarter(sampleRate)).toBeGreaterThan(2.9)
    for (const sampleRate of [176_400, 192_000]) within(quarter(sampleRate), 0, 1e-6)
  })

  it('under-reads by no more than 0.55 dB below 0.45 fs (Attachment 1: 0.554 dB at 4 times)', () => {
    for (let k = 1; k <= 45; k++) {
      for (const phase of [0, 0.25, 0.5, 0.75]) {
        const sine = Float32Array.from({ length: 4800 }, (_, i) =>
          Math.sin(2 * Math.PI * ((i * k) / 100) + phase),
        )
        const peak = measure(inChannels(48_000, faded(sine, 48_000), 1)).truePeakDbtp
        expect(peak).toBeGreaterThan(-0.56)
        expect(peak).toBeLessThan(0.2)
      }
    }
  })
})

describe('libebur128, a general-purpose library', () => {
  it.each(recordings())('agrees to 0.2 dB on the recording $name, once and four times over', ({ sound }) => {
    for (const taken of [sound, repeated(sound, 4)]) {
      const [samples] = taken.channels
      if (!samples) throw new Error('no channel')
      within(measure(taken).truePeakDbtp, ebur128_true_peak_mono(taken.sampleRate, samples), 0.2)
    }
  })

  it('agrees to 0.001 dB on noise, at both oversampled rates', () => {
    for (const sampleRate of [44_100, 96_000]) {
      const sound = noise(sampleRate, 2, 2, 7, (seconds) => (seconds < 1.9 ? 0.5 : 0))
      const [left, right] = sound.channels
      if (!left || !right) throw new Error('no channel')
      within(measure(sound).truePeakDbtp, ebur128_true_peak_stereo(sampleRate, left, right), 0.001)
    }
  })
})

/** Fades of 10 ms at both ends, as Tech 3341 has them. */
function faded(samples: Float32Array, sampleRate: number): Float32Array {
  const length = sampleRate / 100
  return samples.map((x, i) => x * Math.min(1, i / length, (samples.length - 1 - i) / length))
}

/** At 4 fs: fs/6 at half amplitude, with one period of fs/4 at full amplitude in its middle. */
function phaseContinuousBurst(): Float64Array {
  const slow = 24
  const fast = 16
  const before = slow * 200
  return Float64Array.from({ length: 2 * before + fast }, (_, i) => {
    if (i < before) return 0.5 * Math.sin((2 * Math.PI * i) / slow)
    if (i < before + fast) return Math.sin((2 * Math.PI * (i - before)) / fast)
    return 0.5 * Math.sin((2 * Math.PI * (i - before - fast)) / slow)
  })
}

/** Low-pass at fs/2 for sound at 4 fs: a sinc of 801 points under a Blackman window. */
function lowPassed(samples: Float64Array): Float64Array {
  const half = 400
  const weights = Array.from({ length: 2 * half + 1 }, (_, k) => {
    const x = k - half
    const window = 0.42 + 0.5 * Math.cos((Math.PI * x) / half) + 0.08 * Math.cos((2 * Math.PI * x) / half)
    return window * (x === 0 ? 0.25 : Math.sin((Math.PI * x) / 4) / (Math.PI * x))
  })
  return samples.map((_, i) =>
    weights.reduce((sum, weight, k) => sum + weight * (samples[i + k - half] ?? 0), 0),
  )
}

function everyFourth(samples: Float64Array, offset: number): Float32Array {
  return Float32Array.from(
    { length: Math.floor((samples.length - offset) / 4) },
    (_, i) => samples[4 * i + offset] ?? 0,
  )
}
