import { FourierTransform, hann, powerOfTwoFrom } from '../../dsp/numeric/fft'
import { powerToDb } from '../../sound/decibels'
import { frameCount, type Sound } from '../../sound/sound'
import { finished, STEP_FRAMES, type Steps } from '../../sound/steps'
import { MeasureError } from '../error'

export interface SpectrumOptions {
  /** Each level is of a band 1 / bandsPerOctave octave wide; 1 to 48, 6 by default. */
  readonly bandsPerOctave?: number
  /** How densely levels are given; bands of neighbouring points overlap. 1 to 96, 24 by default. */
  readonly pointsPerOctave?: number
  /** Centre of the lowest band, Hz; 20 by default. */
  readonly lowestHz?: number
  /** Centre of the highest band, Hz; 20000 by default, lowered to keep the band below half the sample rate. */
  readonly highestHz?: number
  /** Segments averaged for each channel, at least 1: in longer sounds they lie further apart. No limit by default. */
  readonly mostSegments?: number
}

/** Levels of overlapping bands; both arrays have one element for each point. */
export interface Spectrum {
  /** Band centres, logarithmically spaced, ascending. */
  readonly frequenciesHz: Float64Array
  /** Band levels, dB; NaN, not measurable, where there is nothing at all. */
  readonly levelDb: Float64Array
}

/** Length of a segment, rounded up to a power of two of frames: bins at most 3.4 Hz apart. */
const SEGMENT_SECONDS = 0.3

/**
 * Long-term average spectrum by Welch's method: Hann segments of at least 0.3 s, half overlapping, powers
 * averaged over time and channels, then added up over fractional-octave bands with sharp edges.
 *
 * The level of a band is its root mean square in dBFS, on the scale of `rmsDbfs`: a full-scale sine in the
 * middle of a band reads -3.01 dB there, and bands that tile the spectrum add up (as powers) to the level of
 * the whole. White noise therefore rises by 3 dB an octave. A sine's energy is spread over four bins (about
 * 12 Hz), so bands narrower than that, below some 100 Hz at six to the octave, show less than all of it.
 *
 * Source: P. D. Welch, "The Use of Fast Fourier Transform for the Estimation of Power Spectra", IEEE Trans.
 * Audio Electroacoust. 15(2), 1967.
 *
 * @param sound finite samples; one shorter than a segment is taken as a single shorter segment
 * @throws MeasureError `option` outside the ranges of {@link SpectrumOptions}
 */
export function longTermSpectrum(sound: Sound, options: SpectrumOptions = {}): Spectrum {
  return finished(longTermSpectrumSteps(sound, options))
}

/** {@link longTermSpectrum} in steps. */
export function* longTermSpectrumSteps(sound: Sound, options: SpectrumOptions = {}): Steps<Spectrum> {
  const { bandsPerOctave = 6, pointsPerOctave = 24, lowestHz = 20, highestHz = 20_000 } = options
  const { mostSegments = Number.POSITIVE_INFINITY } = options
  inRange('bandsPerOctave', bandsPerOctave, 1, 48)
  inRange('pointsPerOctave', pointsPerOctave, 1, 96)
  inRange('mostSegments', mostSegments, 1, Number.POSITIVE_INFINITY)
  inRange('lowestHz', lowestHz, 1, sound.sampleRate / 4)
  const halfBand = 2 ** (0.5 / bandsPerOctave)
  const limitHz = Math.min(highestHz, sound.sampleRate / 2 / halfBand)
  inRange('highestHz', limitHz, lowestHz, Number.MAX_VALUE)
  // A rounding error must not cost the last point of a range that ends exactly on one.
  const steps = Math.floor(Math.log2(limitHz / lowestHz) * pointsPerOctave + 1e-9)
  const frequenciesHz = Float64Array.from(
    { length: steps + 1 },
    (_, i) => lowestHz * 2 ** (i / pointsPerOctave),
  )
  const { powers, binHz } = yield* binPowerSteps(sound, mostSegments)
  const levelDb = frequenciesHz.map((hz) => {
    const power = powerBetween(powers, hz / halfBand / binHz, (hz * halfBand) / binHz)
    return power > 0 ? powerToDb(power) : Number.NaN
  })
  return { frequenciesHz, levelDb }
}

function inRange(name: string, value: number, lowest: number, highest: number): void {
  if (!(value >= lowest && value <= highest)) {
    throw new MeasureError('option', `${name} ${value} (expected ${lowest} to ${highest})`)
  }
}

/** Mean square in each bin, one-sided, averaged over segments and channels. */
function* binPowerSteps(
  { sampleRate, channels }: Sound,
  mostSegments: number,
): Steps<{ powers: Float64Array; binHz: number }> {
  const fft = new FourierTransform(powerOfTwoFrom(sampleRate * SEGMENT_SECONDS))
  const frames = frameCount({ sampleRate, channels })
  const length = Math.min(fft.size, frames)
  const hop = Math.max(1, Math.ceil(length / 2), Math.ceil(frames / mostSegments))
  const window = hann(length)
  const sums = new Float64Array(fft.size / 2 + 1)
  const segment = new Float64Array(fft.size)
  const segmentsInStep = Math.max(1, Math.floor(STEP_FRAMES / fft.size))
  let segments = 0
  for (const [c, samples] of channels.entries()) {
    for (let start = 0; length > 0 && start + length <= samples.length; start += hop) {
      if (segments % segmentsInStep === 0) yield (c + start / frames) / channels.length
      windowed(segment, samples, start, window)
      add(sums, fft.powers(segment))
      segments++
    }
  }
  // Parseval: the squares of all bins, negative frequencies too, add up to size * sum of (window * x)^2.
  const windowEnergy = window.reduce((sum, weight) => sum + weight * weight, 0)
  const scale = segments * fft.size * windowEnergy
  const powers = sums.map((sum, k) => {
    const sides = k === 0 || k === sums.length - 1 ? 1 : 2
    return scale > 0 ? (sides * sum) / scale : 0
  })
  return { powers, binHz: sampleRate / fft.size }
}

/** Writes the samples from `start` on under `window` to `segment`. */
function windowed(segment: Float64Array, samples: Float32Array, start: number, window: Float64Array): void {
  for (let n = 0; n < window.length; n++) segment[n] = (window[n] ?? 0) * (samples[start + n] ?? 0)
}

function add(sums: Float64Array, values: Float64Array): void {
  for (let k = 0; k < sums.length; k++) sums[k] = (sums[k] ?? 0) + (values[k] ?? 0)
}

/**
 * Power between two frequencies given in bins; a bin's power is spread evenly over half a bin either side. Added
 * up afresh for each band: differences of running sums would lose what is faint behind what is strong.
 */
function powerBetween(powers: Float64Array, from: number, to: number): number {
  let sum = 0
  for (let k = Math.floor(from + 0.5); k <= Math.min(Math.floor(to + 0.5), powers.length - 1); k++) {
    const overlap = Math.min(to, k + 0.5) - Math.max(from, k - 0.5)
    sum += overlap * (powers[k] ?? 0)
  }
  return sum
}
