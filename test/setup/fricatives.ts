import { highPass, lowPass } from '../../src/core/dsp/filters/bilinear'
import { BiquadCascade } from '../../src/core/dsp/filters/biquad-cascade'
import type { Sound } from '../../src/core/sound/sound'
import { inChannels, joined, mulberry32, noise } from './signals'

/**
 * A. Jongman, R. Wayland, S. Wong, "Acoustic characteristics of English fricatives", JASA 108(3), 2000: /s/
 * peaks at 6839 Hz, lasts 178 ms and lies 11.0 dB below the vowel.
 */
export const S = { peakHz: 6839, seconds: 0.178, levelDb: -11 }
/** The same of /sh/. */
export const SH = { peakHz: 3820, seconds: 0.178, levelDb: -9.9 }
/**
 * Of /f/ and /th/ there: spread over the whole spectrum, variance 6.37 and 6.19 MHz against 2.92 and 3.38 of /s/ and
 * /sh/, mean 5108 and 5137 Hz: as of noise that is even from 0.7 to 9.5 kHz ((b - a)^2 / 12 = 6.45, mean 5100).
 */
export const EVEN = { fromHz: 700, toHz: 9500 }
export const F = { seconds: 0.166, levelDb: -20.8 }
export const TH = { seconds: 0.163, levelDb: -21.9 }
/** Half a window and a hop of the analysis. */
export const EDGE_SECONDS = 0.015

/** A vowel: harmonics of 220 Hz under the first three formants of a man's /a/ (Peterson, Barney, JASA 24, 1952). */
export function vowel(sampleRate: number, seconds: number): Float32Array {
  const formants: [number, number][] = [
    [730, 1],
    [1090, 0.6],
    [2440, 0.15],
  ]
  const sizes = Array.from({ length: 18 }, (_, k) =>
    formants.reduce((sum, [hz, size]) => sum + size / (1 + (((k + 1) * 220 - hz) / 80) ** 2), 0.002),
  )
  return withRms(
    Float32Array.from({ length: Math.round(seconds * sampleRate) }, (_, i) =>
      sizes.reduce(
        (sum, size, k) => sum + size * Math.sin((2 * Math.PI * 220 * (k + 1) * i) / sampleRate + k * k),
        0,
      ),
    ),
    0.1,
  )
}

/** Noise through a resonance 1.5 kHz wide (D. H. Klatt, JASA 67(3), 1980), so with a peak where /s/ has it. */
export function hiss(sampleRate: number, seconds: number, peakHz: number, rms: number): Float32Array {
  const random = mulberry32(9)
  const c = -Math.exp((-2 * Math.PI * 1500) / sampleRate)
  const b = 2 * Math.exp((-Math.PI * 1500) / sampleRate) * Math.cos((2 * Math.PI * peakHz) / sampleRate)
  let [y1, y2, x2, x1] = [0, 0, 0, 0]
  return withRms(
    Float32Array.from({ length: Math.round(seconds * sampleRate) }, () => {
      const x = random() - 0.5
      // Zeros at DC and half the rate keep the resonance a band.
      const y = x - x2 + b * y1 + c * y2
      ;[x2, x1, y2, y1] = [x1, x, y1, y]
      return y
    }),
    rms,
  )
}

/** Noise of even density between two frequencies, or up to half the sample rate. */
export function evenNoise(
  sampleRate: number,
  seconds: number,
  rms: number,
  { fromHz, toHz } = EVEN,
): Float32Array {
  const [samples = new Float32Array()] = noise(sampleRate, seconds, 1, 5, () => 1).channels
  const sections = [0.5412, 1.3066].flatMap((q) => [
    highPass(fromHz, q, sampleRate),
    ...(toHz < 0.45 * sampleRate ? [lowPass(toHz, q, sampleRate)] : []),
  ])
  const filter = new BiquadCascade(sections.length, 1, 0)
  filter.set(sections)
  filter.process([samples], samples.length)
  return withRms(samples, rms)
}

/** A hiss with a vowel of 0.4 s on either side. */
export function betweenVowels(sampleRate: number, hissing: Float32Array): Sound {
  return inChannels(sampleRate, joined([vowel(sampleRate, 0.4), hissing, vowel(sampleRate, 0.4)]), 1)
}

export function withRms(samples: Float32Array, rms: number): Float32Array {
  const now = Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length)
  return samples.map((x) => (x * rms) / now)
}

export const loudnessOf = (levelDb: number) => 0.1 * 10 ** (levelDb / 20)
