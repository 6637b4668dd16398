import { FourierTransform, hann, powerOfTwoFrom } from '../../dsp/numeric/fft'
import { powerToDb } from '../../sound/decibels'
import type { Sound } from '../../sound/sound'
import { finished, STEP_FRAMES, type Steps } from '../../sound/steps'
import { MeasureError } from '../error'
import { RowWeights } from './row-weights'

/** Rows of a column, from the lowest frequency up: about eleven to an octave. */
export const SPECTROGRAM_ROWS = 96
/** The lowest row begins here; the highest ends at 20 kHz, or at half the sample rate where that is lower. */
export const SPECTROGRAM_LOWEST_HZ = 50
const HIGHEST_HZ = 20_000

/** What a byte stands for: 255 for 0 dB and above, each step below it half a decibel, 0 for -127.5 dB and below. */
const STEPS_PER_DB = 2
const LOUDEST_BYTE = 255

/** Level in dB that a byte of a spectrogram stands for, -127.5 to 0. */
export function spectrogramDb(byte: number): number {
  return (byte - LOUDEST_BYTE) / STEPS_PER_DB
}

/** Which columns of a spectrogram are wanted: each is of a run of `hopFrames` frames. */
export interface SpectrogramColumns {
  /** Where the first column begins; ahead of the sound and behind it there is silence. */
  readonly fromFrame: number
  readonly hopFrames: number
  readonly count: number
}

/** Upper end of the highest row, Hz. */
export function spectrogramHighestHz(sampleRate: number): number {
  return Math.min(HIGHEST_HZ, sampleRate / 2)
}

/** The shortest and the longest window, seconds, each rounded up to a power of two of frames. */
const SHORTEST_SECONDS = 0.01
const LONGEST_SECONDS = 0.08
/** Between those: a smear of so many columns is not seen as one, and harmonics come apart as early as can be. Chosen by eye. */
const COLUMNS_IN_WINDOW = 8
/** Windows of long columns: those of up to so many lie half over one another, those of longer ones further apart. */
const MOST_WINDOWS = 8

/**
 * Levels along time and frequency: {@link SPECTROGRAM_ROWS} bytes for each column, one column after the other (see
 * {@link spectrogramDb}). Powers of Hann windows, averaged over channels and over the windows of a column, are added up
 * over rows that tile 50 Hz to 20 kHz in equal ratios. The window is some eight columns long, from 10 ms,
 * where an attack is seen, to 80 ms, where neighbouring harmonics of a low voice are.
 *
 * The scale is that of `longTermSpectrum`: a row's level is its root mean square in dBFS, so that a full-scale sine in
 * the middle of a row reads -3.01 dB there, and white noise has the same power density in every row.
 *
 * Source of the scaling (powers of windowed segments, divided by the energy of the window): P. D. Welch, "The Use of Fast
 * Fourier Transform for the Estimation of Power Spectra", IEEE Trans. Audio Electroacoust. 15(2), 1967.
 *
 * @param sound finite samples, above 100 Hz
 * @throws MeasureError `option` for a hop that is no whole number from 1
 */
export function spectrogram(sound: Sound, columns: SpectrogramColumns): Uint8Array<ArrayBuffer> {
  return finished(spectrogramSteps(sound, columns))
}

/** {@link spectrogram} in steps. */
export function* spectrogramSteps(
  { sampleRate, channels }: Sound,
  { fromFrame, hopFrames, count }: SpectrogramColumns,
): Steps<Uint8Array<ArrayBuffer>> {
  if (!Number.isInteger(hopFrames) || hopFrames < 1)
    throw new MeasureError('option', `hopFrames ${hopFrames} (expected a whole number from 1)`)
  const size = windowFrames(hopFrames, sampleRate)
  const fft = new FourierTransform(size)
  const window = hann(size)
  const segment = new Float64Array(size)
  const rows = new RowWeights(rowEdges(sampleRate), sampleRate / size, size / 2 + 1)
  const windows = Math.min(MOST_WINDOWS, Math.max(1, Math.round(hopFrames / (size / 2))))
  // Parseval, one-sided: the squares of all bins add up to size * sum of (window * x)^2, that of the window is 3/8 size.
  const scale = 2 / (size * size * 0.375 * windows * Math.max(1, channels.length))
  const levels = new Uint8Array(count * SPECTROGRAM_ROWS)
  const sums = new Float64Array(SPECTROGRAM_ROWS)
  const windowsInStep = Math.max(1, Math.floor(STEP_FRAMES / size))
  let done = 0
  for (let column = 0; column < count; column++) {
    sums.fill(0)
    for (let i = 0; i < windows; i++) {
      const middle = fromFrame + hopFrames * (column + (i + 0.5) / windows)
      for (const samples of channels) {
        windowed(segment, samples, Math.round(middle) - size / 2, window)
        rows.addTo(sums, fft.powers(segment))
        if (++done % windowsInStep === 0) yield (column + i / windows) / count
      }
    }
    for (let row = 0; row < SPECTROGRAM_ROWS; row++)
      levels[column * SPECTROGRAM_ROWS + row] = byteOf(scale * (sums[row] ?? 0))
  }
  return levels
}

/** Frames of the window of a column. */
function windowFrames(hopFrames: number, sampleRate: number): number {
  const shortest = powerOfTwoFrom(SHORTEST_SECONDS * sampleRate)
  const longest = powerOfTwoFrom(LONGEST_SECONDS * sampleRate)
  return Math.min(longest, Math.max(shortest, powerOfTwoFrom(COLUMNS_IN_WINDOW * hopFrames)))
}

/** Lower edge of each row, and the upper edge of the last, Hz. */
function rowEdges(sampleRate: number): Float64Array {
  const ratio = spectrogramHighestHz(sampleRate) / SPECTROGRAM_LOWEST_HZ
  return Float64Array.from(
    { length: SPECTROGRAM_ROWS + 1 },
    (_, row) => SPECTROGRAM_LOWEST_HZ * ratio ** (row / SPECTROGRAM_ROWS),
  )
}

/** Writes the samples from `start` on under `window` to `segment`; silence where there are none. */
function windowed(segment: Float64Array, samples: Float32Array, start: number, window: Float64Array): void {
  const from = Math.min(segment.length, Math.max(0, -start))
  const to = Math.max(from, Math.min(segment.length, samples.length - start))
  segment.fill(0, 0, from)
  for (let n = from; n < to; n++) segment[n] = (window[n] ?? 0) * (samples[start + n] ?? 0)
  segment.fill(0, to)
}

function byteOf(power: number): number {
  const byte = Math.round(LOUDEST_BYTE + STEPS_PER_DB * powerToDb(power))
  return Math.min(LOUDEST_BYTE, Math.max(0, byte))
}
