import { FourierTransform } from '../../src/core/dsp/numeric/fft'

const FRAME = 8192
const HOP = FRAME / 4

/**
 * Four-term window with side lobes below -92 dB. Source: F. J. Harris, "On the Use of Windows for Harmonic
 * Analysis with the Discrete Fourier Transform", Proc. IEEE 66(1), 1978, table 1 (minimum 4-sample
 * Blackman-Harris).
 */
const WINDOW = Float64Array.from({ length: FRAME }, (_, n) => {
  const angle = (2 * Math.PI * n) / FRAME
  return 0.35875 - 0.48829 * Math.cos(angle) + 0.14128 * Math.cos(2 * angle) - 0.01168 * Math.cos(3 * angle)
})

/**
 * The most power, in any 171 ms of `samples`, that lies farther than `apartHz` from the tone and all of its
 * harmonics (and from 0 Hz), in dB re the tone of amplitude `toneLevel`, or re all power in those 171 ms where
 * that is more.
 */
export function splatterDb(
  samples: Float32Array,
  { sampleRate, toneHz, toneLevel, apartHz }: SplatterOptions,
): number {
  const transform = new FourierTransform(FRAME)
  const frame = new Float64Array(FRAME)
  const windowPower = WINDOW.reduce((sum, w) => sum + w * w, 0)
  // Power of a windowed tone summed over the bins of positive frequency.
  const tonePower = (toneLevel ** 2 / 4) * windowPower * FRAME
  let worst = 0
  for (let from = 0; from + FRAME <= samples.length; from += HOP) {
    for (let n = 0; n < FRAME; n++) frame[n] = (samples[from + n] ?? 0) * (WINDOW[n] ?? 0)
    let total = 0
    let apart = 0
    transform.powers(frame).forEach((power, k) => {
      const hz = (k * sampleRate) / FRAME
      total += power
      if (Math.abs(hz - toneHz * Math.round(hz / toneHz)) > apartHz) apart += power
    })
    worst = Math.max(worst, apart / Math.max(tonePower, total))
  }
  return 10 * Math.log10(worst)
}

export interface SplatterOptions {
  readonly sampleRate: number
  readonly toneHz: number
  readonly toneLevel: number
  readonly apartHz: number
}
