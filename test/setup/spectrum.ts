/** A complex number. */
export interface Complex {
  readonly re: number
  readonly im: number
}

/** Discrete-time Fourier transform of `samples` from frame `from` to `to`, at one frequency, summed in 64 bits. */
export function transformAt(
  samples: ArrayLike<number>,
  frequencyHz: number,
  sampleRate: number,
  from = 0,
  to = samples.length,
): Complex {
  const w = (2 * Math.PI * frequencyHz) / sampleRate
  let re = 0
  let im = 0
  for (let n = from; n < to; n++) {
    const x = samples[n] ?? 0
    re += x * Math.cos(w * n)
    im -= x * Math.sin(w * n)
  }
  return { re, im }
}

/** Magnitude of {@link transformAt} in dB. */
export function transformDb(...args: Parameters<typeof transformAt>): number {
  const { re, im } = transformAt(...args)
  return 20 * Math.log10(Math.hypot(re, im))
}

/** Amplitude of the sine of one frequency in `samples` from frame `from` to `to`, a whole number of its periods. */
export function sineAmplitude(
  samples: ArrayLike<number>,
  frequencyHz: number,
  sampleRate: number,
  from: number,
  to: number,
): number {
  const { re, im } = transformAt(samples, frequencyHz, sampleRate, from, to)
  return (2 * Math.hypot(re, im)) / (to - from)
}

/** Root mean square of `samples` from frame `from` to `to`, in dB re 1. */
export function rmsDb(samples: Float32Array, from = 0, to = samples.length): number {
  let sum = 0
  for (const x of samples.subarray(from, to)) sum += x * x
  return 10 * Math.log10(sum / (to - from))
}

/** Largest absolute difference between two lists of channels, linear. */
export function largestDifference(a: readonly ArrayLike<number>[], b: readonly ArrayLike<number>[]): number {
  let most = a.length === b.length ? 0 : Number.POSITIVE_INFINITY
  a.forEach((samples, c) => {
    const others = b[c] ?? []
    if (samples.length !== others.length) most = Number.POSITIVE_INFINITY
    for (let n = 0; n < samples.length; n++) {
      const difference = Math.abs((samples[n] ?? 0) - (others[n] ?? 0))
      if (!(difference <= most)) most = difference
    }
  })
  return most
}

/** `count` frequencies from `fromHz` to `toHz` at equal ratios, both ends included. */
export function frequencies(fromHz: number, toHz: number, count: number): number[] {
  return Array.from({ length: count }, (_, i) => fromHz * (toHz / fromHz) ** (i / (count - 1)))
}
