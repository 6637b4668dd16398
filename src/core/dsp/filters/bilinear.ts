import type { Biquad } from './biquad'

/**
 * The bilinear designs of R. Bristow-Johnson, "Audio EQ Cookbook" (W3C Group Note), and the textbook
 * first-order pair. Frequencies in Hz, below half the sample rate; gains in dB; q dimensionless, above 0.
 * Coefficients come normalised to a0 = 1.
 */
function normalised(b0: number, b1: number, b2: number, a0: number, a1: number, a2: number): Biquad {
  return { b0: b0 / a0, b1: b1 / a0, b2: b2 / a0, a1: a1 / a0, a2: a2 / a0 }
}

/** cos(w0), 1 - cos(w0) without cancellation, and the cookbook's alpha. */
function angles(frequencyHz: number, q: number, sampleRate: number) {
  const w0 = (2 * Math.PI * frequencyHz) / sampleRate
  return { cosine: Math.cos(w0), versine: 2 * Math.sin(w0 / 2) ** 2, alpha: Math.sin(w0) / (2 * q) }
}

/** Second-order low-pass: q = 0.7071 is Butterworth, -3.01 dB at the corner. */
export function lowPass(frequencyHz: number, q: number, sampleRate: number): Biquad {
  const { cosine, versine, alpha } = angles(frequencyHz, q, sampleRate)
  return normalised(versine / 2, versine, versine / 2, 1 + alpha, -2 * cosine, 1 - alpha)
}

/** Second-order high-pass: q = 0.7071 is Butterworth, -3.01 dB at the corner. */
export function highPass(frequencyHz: number, q: number, sampleRate: number): Biquad {
  const { cosine, alpha } = angles(frequencyHz, q, sampleRate)
  const edge = (1 + cosine) / 2
  return normalised(edge, -2 * edge, edge, 1 + alpha, -2 * cosine, 1 - alpha)
}

/** Bell of `gainDb` at its centre; +g and -g at equal frequency and q are exact inverses. */
export function bell(frequencyHz: number, gainDb: number, q: number, sampleRate: number): Biquad {
  const { cosine, alpha } = angles(frequencyHz, q, sampleRate)
  const amplitude = 10 ** (gainDb / 40)
  return normalised(
    1 + alpha * amplitude,
    -2 * cosine,
    1 - alpha * amplitude,
    1 + alpha / amplitude,
    -2 * cosine,
    1 - alpha / amplitude,
  )
}

/** Notch: nothing passes at its centre, 0 dB far from it. */
export function notch(frequencyHz: number, q: number, sampleRate: number): Biquad {
  const { cosine, alpha } = angles(frequencyHz, q, sampleRate)
  return normalised(1, -2 * cosine, 1, 1 + alpha, -2 * cosine, 1 - alpha)
}

/** All-pass: magnitude 1 everywhere, phase turning through 360 degrees around its centre. */
export function allPass(frequencyHz: number, q: number, sampleRate: number): Biquad {
  const { cosine, alpha } = angles(frequencyHz, q, sampleRate)
  return normalised(1 - alpha, -2 * cosine, 1 + alpha, 1 + alpha, -2 * cosine, 1 - alpha)
}

/** Low shelf of `gainDb` at DC, half of it (in dB) at `frequencyHz`. */
export function lowShelf(frequencyHz: number, gainDb: number, q: number, sampleRate: number): Biquad {
  const { cosine, alpha } = angles(frequencyHz, q, sampleRate)
  const a = 10 ** (gainDb / 40)
  const root = 2 * Math.sqrt(a) * alpha
  return normalised(
    a * (a + 1 - (a - 1) * cosine + root),
    2 * a * (a - 1 - (a + 1) * cosine),
    a * (a + 1 - (a - 1) * cosine - root),
    a + 1 + (a - 1) * cosine + root,
    -2 * (a - 1 + (a + 1) * cosine),
    a + 1 + (a - 1) * cosine - root,
  )
}

/** High shelf of `gainDb` at half the sample rate, half of it (in dB) at `frequencyHz`. */
export function highShelf(frequencyHz: number, gainDb: number, q: number, sampleRate: number): Biquad {
  const { cosine, alpha } = angles(frequencyHz, q, sampleRate)
  const a = 10 ** (gainDb / 40)
  const root = 2 * Math.sqrt(a) * alpha
  return normalised(
    a * (a + 1 + (a - 1) * cosine + root),
    -2 * a * (a - 1 + (a + 1) * cosine),
    a * (a + 1 + (a - 1) * cosine - root),
    a + 1 - (a - 1) * cosine + root,
    2 * (a - 1 - (a + 1) * cosine),
    a + 1 - (a - 1) * cosine - root,
  )
}

/** First-order low-pass, 6 dB per octave: bilinear transform of 1 / (s + 1). */
export function lowPassFirstOrder(frequencyHz: number, sampleRate: number): Biquad {
  const k = Math.tan((Math.PI * frequencyHz) / sampleRate)
  return normalised(k, k, 0, 1 + k, k - 1, 0)
}

/** First-order high-pass, 6 dB per octave: bilinear transform of s / (s + 1). */
export function highPassFirstOrder(frequencyHz: number, sampleRate: number): Biquad {
  const k = Math.tan((Math.PI * frequencyHz) / sampleRate)
  return normalised(1, -1, 0, 1 + k, k - 1, 0)
}
