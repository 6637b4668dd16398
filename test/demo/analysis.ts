/** Measurements for the tests of the demo, written apart from the core so that they can disagree with it. */

/** Power at `frequencyHz` of the Hamming-windowed frames `from` up to `to` of `samples`. */
export function powerAt(
  samples: ArrayLike<number>,
  from: number,
  to: number,
  frequencyHz: number,
  rate: number,
) {
  const turn = (2 * Math.PI * frequencyHz) / rate
  const [turnCos, turnSin] = [Math.cos(turn), Math.sin(turn)]
  const slow = (2 * Math.PI) / (to - from)
  const [slowCos, slowSin] = [Math.cos(slow), Math.sin(slow)]
  let [cosine, sine, windowCos, windowSin] = [1, 0, 1, 0]
  let real = 0
  let imaginary = 0
  for (let i = from; i < to; i += 1) {
    const sample = (0.54 - 0.46 * windowCos) * (samples[i] ?? 0)
    real += sample * cosine
    imaginary += sample * sine
    const turned = cosine * turnCos - sine * turnSin
    sine = sine * turnCos + cosine * turnSin
    cosine = turned
    const slid = windowCos * slowCos - windowSin * slowSin
    windowSin = windowSin * slowCos + windowCos * slowSin
    windowCos = slid
  }
  return real * real + imaginary * imaginary
}

/**
 * Level between two frequencies of frames `from` up to `to` of a noise, dB of RMS; `stepHz` is how finely it looks.
 * 0.3974 is the mean square of a Hamming window.
 */
export function bandDb(
  samples: ArrayLike<number>,
  [from, to]: readonly [number, number],
  [fromHz, toHz]: readonly [number, number],
  stepHz: number,
  rate: number,
): number {
  let power = 0
  for (let f = fromHz; f < toHz; f += stepHz) power += powerAt(samples, from, to, f, rate)
  return 10 * Math.log10((2 * power * stepHz) / (rate * (to - from) * 0.3974))
}

/** Frames `from` up to `to` of `samples` without what lies above `cornerHz`: a windowed sinc 40 ms long. */
export function lowPassed(
  samples: ArrayLike<number>,
  from: number,
  to: number,
  cornerHz: number,
  rate: number,
): Float64Array {
  const reach = Math.round(0.02 * rate)
  const kernel = Float64Array.from({ length: 2 * reach + 1 }, (_, i) => {
    const x = Math.PI * 2 * (cornerHz / rate) * (i - reach)
    return (x === 0 ? 1 : Math.sin(x) / x) * (0.54 + 0.46 * Math.cos((Math.PI * (i - reach)) / reach))
  })
  const sum = kernel.reduce((total, value) => total + value, 0)
  return Float64Array.from({ length: to - from }, (_, n) =>
    kernel.reduce((total, value, i) => total + (value / sum) * (samples[from + n + i - reach] ?? 0), 0),
  )
}

/** RMS of frames `from` up to `to`. */
export function rmsOf(samples: ArrayLike<number>, from: number, to: number): number {
  let power = 0
  for (let i = from; i < to; i += 1) power += (samples[i] ?? 0) ** 2
  return Math.sqrt(power / (to - from))
}

/** Fundamental around a frame, Hz, by the first high peak of the normalised autocorrelation over 25 ms. */
export function pitchAt(samples: ArrayLike<number>, centre: number, rate: number): number {
  const width = Math.round(0.025 * rate)
  const longest = Math.ceil(rate / 190)
  const start = centre - Math.round((width + longest) / 2)
  const likeness = (lag: number) => {
    let product = 0
    let power = 0
    let lagged = 0
    for (let i = start; i < start + width; i += 1) {
      const a = samples[i] ?? 0
      const b = samples[i + lag] ?? 0
      product += a * b
      power += a * a
      lagged += b * b
    }
    return product / Math.sqrt(power * lagged)
  }
  const shortest = Math.floor(rate / 620)
  const curve = Array.from({ length: longest - shortest + 1 }, (_, i) => likeness(shortest + i))
  const at = (i: number) => curve[i] ?? 0
  const enough = 0.92 * Math.max(...curve)
  const peak = curve.findIndex((value, i) => value >= enough && value >= at(i - 1) && value > at(i + 1))
  const bend = at(peak - 1) - 2 * at(peak) + at(peak + 1)
  return rate / (shortest + peak + (0.5 * (at(peak - 1) - at(peak + 1))) / bend)
}

export function centsBetween(fromHz: number, toHz: number): number {
  return 1200 * Math.log2(toHz / fromHz)
}

/**
 * Formants below 6 kHz, Hz, in rising order: peaks of the all-pole spectrum fitted to the part below 6 kHz of
 * the power spectrum (J. Makhoul, "Spectral linear prediction", IEEE Trans. ASSP 23(3), 1975), after a rise of
 * 6 dB per octave.
 */
export function formantsOf(samples: ArrayLike<number>, from: number, to: number, rate: number): number[] {
  const topHz = 6000
  const stepHz = 20
  const order = 12
  const correlation = new Float64Array(order + 1)
  for (let f = stepHz; f < topHz; f += stepHz) {
    const power = powerAt(samples, from, to, f, rate) * f * f
    for (let m = 0; m <= order; m += 1) {
      correlation[m] = (correlation[m] ?? 0) + power * Math.cos((Math.PI * f * m) / topHz)
    }
  }
  const predictor = levinson(correlation)
  const height = (f: number) => {
    let real = 0
    let imaginary = 0
    predictor.forEach((a, m) => {
      real += a * Math.cos((Math.PI * f * m) / topHz)
      imaginary += a * Math.sin((Math.PI * f * m) / topHz)
    })
    return -(real * real + imaginary * imaginary)
  }
  const peaks: number[] = []
  for (let f = 150; f < topHz; f += 5) {
    if (height(f) > height(f - 5) && height(f) >= height(f + 5)) peaks.push(f)
  }
  return peaks
}

/** Predictor 1, a1, a2 ... of an autocorrelation, by the Levinson-Durbin recursion. */
function levinson(correlation: Float64Array): number[] {
  let predictor = [1]
  let error = correlation[0] ?? 0
  for (let m = 1; m < correlation.length; m += 1) {
    const miss = predictor.reduce((sum, a, i) => sum + a * (correlation[m - i] ?? 0), 0)
    const reflection = -miss / error
    const longer = [...predictor, 0]
    predictor = longer.map((a, i) => a + reflection * (longer[m - i] ?? 0))
    error *= 1 - reflection * reflection
  }
  return predictor
}

/**
 * Peak, mean and variance up to 11 kHz of the spectrum of a noise, averaged over its 40 ms frames; the peak
 * is taken from a spectrum smoothed over 500 Hz.
 */
export function noiseSpectrum(samples: ArrayLike<number>, rate: number) {
  const frame = Math.round(0.04 * rate)
  const stepHz = 50
  const spectrum = new Float64Array(11_000 / stepHz)
  for (let from = 0; from + frame <= samples.length; from += frame) {
    spectrum.forEach((power, k) => {
      spectrum[k] = power + powerAt(samples, from, from + frame, k * stepHz, rate)
    })
  }
  const smooth = spectrum.map((_, k) =>
    spectrum.slice(Math.max(0, k - 5), k + 6).reduce((sum, p) => sum + p, 0),
  )
  const total = spectrum.reduce((sum, power) => sum + power, 0)
  const meanHz = spectrum.reduce((sum, power, k) => sum + power * k * stepHz, 0) / total
  const variance = spectrum.reduce((sum, power, k) => sum + power * (k * stepHz - meanHz) ** 2, 0) / total
  return { peakHz: smooth.indexOf(Math.max(...smooth)) * stepHz, meanHz, varianceMhz: variance / 1e6 }
}
