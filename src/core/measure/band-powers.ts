import { FourierTransform, powerOfTwoFrom } from '../dsp/fft'
import { hann } from '../dsp/window'
import { finished } from './finished'

/** Powers below and above a frequency along a sound, one value for each hop. */
export interface BandPowers {
  readonly hopSeconds: number
  /** Mean squares, full scale = 1; element i is of the window around i * hopSeconds. */
  readonly below: Float64Array
  readonly above: Float64Array
}

const HOP_SECONDS = 0.005
const WINDOW_SECONDS = 0.01
/** What lies lower is rumble, not voice. */
const LOWEST_HZ = 100

/** Hops worked on between two steps: ten seconds. */
const HOPS_A_STEP = 2000

/** Splits `samples` at `splitHz` every 5 ms with Hann windows of about 10 ms; reaches into silence at both ends. */
export function bandPowers(samples: Float32Array, sampleRate: number, splitHz: number): BandPowers {
  return finished(bandPowerSteps(samples, sampleRate, splitHz))
}

/** {@link bandPowers} in steps: yields the share done. */
export function* bandPowerSteps(
  samples: Float32Array,
  sampleRate: number,
  splitHz: number,
): Generator<number, BandPowers, void> {
  const fft = new FourierTransform(powerOfTwoFrom(WINDOW_SECONDS * sampleRate))
  const window = hann(fft.size)
  const segment = new Float64Array(fft.size)
  const count = Math.floor(samples.length / sampleRate / HOP_SECONDS) + 1
  const below = new Float64Array(count)
  const above = new Float64Array(count)
  const lowestBin = Math.ceil((LOWEST_HZ * fft.size) / sampleRate)
  const splitBin = Math.round((splitHz * fft.size) / sampleRate)
  // One-sided, as mean square of the sound: the window's mean square is 3/8.
  const scale = 2 / (fft.size * fft.size * 0.375)
  for (let i = 0; i < count; i++) {
    const start = Math.round(i * HOP_SECONDS * sampleRate) - fft.size / 2
    for (let n = 0; n < fft.size; n++) {
      const frame = start + n
      segment[n] = frame >= 0 && frame < samples.length ? (window[n] ?? 0) * (samples[frame] ?? 0) : 0
    }
    const powers = fft.powers(segment)
    below[i] = scale * sum(powers, lowestBin, splitBin)
    above[i] = scale * sum(powers, splitBin, powers.length)
    if (i % HOPS_A_STEP === 0) yield i / count
  }
  return { hopSeconds: HOP_SECONDS, below, above }
}

function sum(values: Float64Array, from: number, to: number): number {
  let total = 0
  for (let i = from; i < to; i++) total += values[i] ?? 0
  return total
}
