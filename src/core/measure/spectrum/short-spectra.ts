import { FourierTransform, hann, powerOfTwoFrom } from '../../dsp/numeric/fft'
import { mixToMono } from '../../sound/mono'
import { frameCount, type Sound } from '../../sound/sound'

const WINDOW_SECONDS = 0.01

/**
 * Power spectra of moments of a sound: one around every multiple of 5 ms, through a Hann window of at least 10 ms, the
 * next power of two of frames. Channels are mixed to one; outside the sound there is silence. Holds its working memory; use one at a time.
 */
export class ShortSpectra {
  static readonly hopSeconds = 0.005
  /** How many moments there are: one for each hop begun, and one for no sound at all. */
  readonly count: number
  /** Distance of two bins, Hz. */
  readonly binHz: number
  /** What a bin is multiplied by to give its mean square; one-sided, the mean square of the window is 3/8. */
  readonly scale: number
  private readonly fft: FourierTransform
  private readonly window: Float64Array
  private readonly samples: Float32Array
  private readonly segment: Float64Array

  constructor(private readonly sound: Sound) {
    const { sampleRate } = sound
    this.fft = new FourierTransform(powerOfTwoFrom(WINDOW_SECONDS * sampleRate))
    this.window = hann(this.fft.size)
    this.samples = new Float32Array(this.fft.size)
    this.segment = new Float64Array(this.fft.size)
    this.count = Math.floor(frameCount(sound) / sampleRate / ShortSpectra.hopSeconds) + 1
    this.binHz = sampleRate / this.fft.size
    this.scale = 2 / (this.fft.size * this.fft.size * 0.375)
  }

  /** Frames in a window. */
  get windowFrames(): number {
    return this.fft.size
  }

  /** Bins from 0 to half the sample rate, both included. */
  get binCount(): number {
    return this.fft.size / 2 + 1
  }

  /** |X|^2 of every bin, 0 to half the sample rate, around moment `index`; the next call overwrites it. */
  powersAt(index: number): Float64Array {
    const { sound, samples, window, segment } = this
    const middle = Math.round(index * ShortSpectra.hopSeconds * sound.sampleRate)
    mixToMono(sound, middle - samples.length / 2, samples)
    for (let n = 0; n < segment.length; n++) segment[n] = (window[n] ?? 0) * (samples[n] ?? 0)
    return this.fft.powers(segment)
  }
}
