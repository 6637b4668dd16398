import { describe, expect, it } from 'vitest'
import { readWav } from '../../src/files/wav/wav-reader'
import { encodeWav } from '../../src/files/wav/wav-writer'

/*
 * Lipshitz, Wannamaker, Vanderkooy, "Quantization and Dither: A Theoretical Survey", JAES 40(5), 1992: with triangular
 * dither of two steps peak to peak the first two moments of the total error are independent of the input: its mean is
 * 0 and its power a quarter of a step squared. Without dither the error is a function of the input.
 */

const RATE = 48_000
const FRAMES = 2 ** 18
const STEP = 2 ** -15
/** Whole periods in the file, and no simple fraction of the rate. */
const CYCLES = 5461

/** Five standard errors: of a mean of the error, of its power (kurtosis below 4), of a correlation coefficient. */
const MEAN_TOLERANCE = 5 * Math.sqrt(1 / 4 / FRAMES)
const POWER_TOLERANCE = 5 * Math.sqrt(3 / 16 / FRAMES)
const CORRELATION_TOLERANCE = 5 / Math.sqrt(FRAMES)

const sine = (steps: number) =>
  Float32Array.from(
    { length: FRAMES },
    (_, n) => steps * STEP * Math.sin((2 * Math.PI * CYCLES * n) / FRAMES),
  )

/** The samples that a 16-bit file of `samples` holds, in steps. */
function written(samples: Float32Array, ditherSeed?: number): Float64Array {
  const sound = { sampleRate: RATE, channels: [samples] }
  const { bytes } = encodeWav(sound, 'pcm16', ditherSeed === undefined ? {} : { ditherSeed })
  return Float64Array.from(readWav(bytes, 'x').sound.channels[0] ?? [], (sample) => sample / STEP)
}

const meanOf = (values: Float64Array) => values.reduce((sum, value) => sum + value, 0) / values.length
const powerOf = (values: Float64Array) => meanOf(values.map((value) => value * value))
const errorOf = (samples: Float32Array, ditherSeed?: number) =>
  written(samples, ditherSeed).map((step, n) => step - (samples[n] ?? 0) / STEP)

/** Amplitude of the sine with CYCLES periods in `values`. */
function amplitudeOf(values: Float64Array, cycles = CYCLES): number {
  let re = 0
  let im = 0
  values.forEach((value, n) => {
    const angle = (2 * Math.PI * cycles * n) / FRAMES
    re += value * Math.cos(angle)
    im += value * Math.sin(angle)
  })
  return (2 * Math.hypot(re, im)) / FRAMES
}

/** Correlation coefficient of two signals of mean 0. */
function correlationOf(a: Float64Array, b: Float64Array): number {
  return meanOf(a.map((value, n) => value * (b[n] ?? 0))) / Math.sqrt(powerOf(a) * powerOf(b))
}

describe('16-bit files with triangular dither', () => {
  it.each([0.3, 0.49, 2.5, 1000.3])(
    'a sine of %f steps: mean error 0, power 1/4 step squared, neither depending on the sine',
    (steps) => {
      const samples = sine(steps)
      const error = errorOf(samples, 1)
      expect(Math.abs(meanOf(error))).toBeLessThan(MEAN_TOLERANCE)
      expect(Math.abs(powerOf(error) - 1 / 4)).toBeLessThan(POWER_TOLERANCE)
      const signal = Float64Array.from(samples)
      expect(Math.abs(correlationOf(error, signal))).toBeLessThan(CORRELATION_TOLERANCE)
      // The power of the error is not that of the sine's magnitude either: no noise modulation.
      const rectified = signal.map(Math.abs)
      const level = meanOf(rectified)
      const swings = rectified.map((value) => value - level)
      const powers = error.map((value) => value * value - 1 / 4)
      expect(Math.abs(correlationOf(powers, swings))).toBeLessThan(CORRELATION_TOLERANCE)
    },
  )

  // The noise in one bin: five times sqrt(4 * power / FRAMES).
  const AMPLITUDE_TOLERANCE = 5 * Math.sqrt(1 / FRAMES)

  it('keeps a sine of less than half a step, which rounding alone makes silence', () => {
    const samples = sine(0.49)
    expect(amplitudeOf(written(samples))).toBe(0)
    expect(Math.abs(amplitudeOf(written(samples, 1)) - 0.49)).toBeLessThan(AMPLITUDE_TOLERANCE)
  })

  it('adds no third harmonic to a sine of 0.6 steps, as rounding alone does', () => {
    const samples = sine(0.6)
    expect(amplitudeOf(written(samples), 3 * CYCLES)).toBeGreaterThan(0.1)
    expect(amplitudeOf(written(samples, 1), 3 * CYCLES)).toBeLessThan(AMPLITUDE_TOLERANCE)
  })

  it('the check tells rounding from dither: without dither the error of a small sine follows it', () => {
    const samples = sine(0.49)
    expect(correlationOf(errorOf(samples), Float64Array.from(samples))).toBeCloseTo(-1, 6)
  })

  it('gives each channel noise of its own, of its own at each seed, and the same at the same seed', () => {
    const quarter = new Float32Array(FRAMES).fill(STEP / 4)
    const sound = { sampleRate: RATE, channels: [quarter, quarter] }
    const read = (ditherSeed: number) =>
      readWav(encodeWav(sound, 'pcm16', { ditherSeed }).bytes, 'x').sound.channels.map((channel) =>
        Float64Array.from(channel, (sample) => sample / STEP - 0.25),
      )
    const [left = new Float64Array(0), right = new Float64Array(0)] = read(1)
    const [other = new Float64Array(0)] = read(2)
    expect(Math.abs(correlationOf(left, right))).toBeLessThan(CORRELATION_TOLERANCE)
    expect(Math.abs(correlationOf(left, other))).toBeLessThan(CORRELATION_TOLERANCE)
    expect(read(1)[0]?.every((step, n) => step === left[n])).toBe(true)
  })
})

describe('samples that are 16-bit steps already', () => {
  const steps = Float32Array.of(0, 1, -32768, 32767, 255).map((step) => step * STEP)

  it('are written as they are, and it is said that nothing was dithered', () => {
    const encoded = encodeWav({ sampleRate: RATE, channels: [steps] }, 'pcm16', { ditherSeed: 1 })
    expect(encoded.isDithered).toBe(false)
    expect(readWav(encoded.bytes, 'x').sound.channels).toEqual([steps])
  })

  it('are written as they are in one channel while the other is dithered', () => {
    const between = new Float32Array(steps.length).fill(STEP / 2)
    const encoded = encodeWav({ sampleRate: RATE, channels: [steps, between] }, 'pcm16', { ditherSeed: 1 })
    expect(encoded.isDithered).toBe(true)
    expect(readWav(encoded.bytes, 'x').sound.channels[0]).toEqual(steps)
  })
})
