import type { SettingsByKind, Sound } from '../../src/core'

/**
 * The compressor of D. Giannoulis, M. Massberg, J. D. Reiss, "Digital Dynamic Range Compressor Design: A Tutorial
 * and Analysis", J. Audio Eng. Soc. 60(6), 2012, once more in 64-bit floats, written from the paper's equations
 * and for reading, not for speed. Nothing of the program is used but the types of its settings.
 */
type Settings = SettingsByKind['compressor']

/** What shapes the reduction over time. */
export type Ballistics = Pick<Settings, 'thresholdDb' | 'ratio' | 'kneeDb' | 'attackMs' | 'releaseMs'>

/** Output level in dB for an input level in dB: the gain computer with hard (W = 0) or quadratic knee. */
export function staticOutputDb(
  x: number,
  { thresholdDb: T, ratio: R, kneeDb: W }: Pick<Settings, 'thresholdDb' | 'ratio' | 'kneeDb'>,
): number {
  if (2 * (x - T) < -W) return x
  if (2 * (x - T) > W) return T + (x - T) / R
  return W === 0 ? x : x + ((1 / R - 1) * (x - T + W / 2) ** 2) / (2 * W)
}

/** Gain reduction in dB along linear `levels`: gain computer, then the smooth branching peak detector. */
export function reductionsDb(
  levels: Float64Array,
  settings: Ballistics,
  sampleRate: number,
  rangeDb = Number.POSITIVE_INFINITY,
): Float64Array {
  const attack = Math.exp(-1 / ((settings.attackMs / 1000) * sampleRate))
  const release = Math.exp(-1 / ((settings.releaseMs / 1000) * sampleRate))
  let y = 0
  return levels.map((level) => {
    const levelDb = 20 * Math.log10(level)
    const x = level > 0 ? Math.min(rangeDb, levelDb - staticOutputDb(levelDb, settings)) : 0
    y = x > y ? attack * y + (1 - attack) * x : release * y + (1 - release) * x
    return y
  })
}

/** `sound` compressed, aligned with the input. */
export function compressed(sound: Sound, settings: Settings): Float64Array[] {
  const { sampleRate } = sound
  const ahead = Math.round((settings.lookaheadMs / 1000) * sampleRate)
  const frames = sound.channels[0]?.length ?? 0
  // What has not sounded yet is read ahead; behind the end of the sound there is silence.
  const padded = sound.channels.map((samples) =>
    Float64Array.from({ length: frames + ahead }, (_, n) => samples[n] ?? 0),
  )
  const read =
    settings.sideChainHighPassHz > 0
      ? padded.map((samples) => butterworthHighPass(samples, settings.sideChainHighPassHz, sampleRate))
      : padded
  const peaks = linkedLevels(read, frames + ahead)
  const levels = settings.detector === 'rms' ? rootMeanSquares(peaks, Math.round(0.01 * sampleRate)) : peaks
  const reductions = reductionsDb(levels, settings, sampleRate)
  const makeup = 10 ** (settings.makeupDb / 20)
  return sound.channels.map((samples) =>
    Float64Array.from(samples, (x, n) => {
      const wet = x * 10 ** (-(reductions[n + ahead] ?? Number.NaN) / 20) * makeup
      return (1 - settings.mix) * x + settings.mix * wet
    }),
  )
}

/** Largest magnitude over the channels, frame by frame. */
export function linkedLevels(channels: readonly Float64Array[], frames: number): Float64Array {
  return Float64Array.from({ length: frames }, (_, n) =>
    Math.max(0, ...channels.map((samples) => Math.abs(samples[n] ?? 0))),
  )
}

/** Root of the mean square over the last `window` values, summed anew for each. */
function rootMeanSquares(levels: Float64Array, window: number): Float64Array {
  return levels.map((_, n) => {
    let sum = 0
    for (let k = Math.max(0, n - window + 1); k <= n; k++) sum += (levels[k] ?? 0) ** 2
    return Math.sqrt(sum / window)
  })
}

/** Butterworth high-pass, 12 dB per octave: the formula of the "Audio EQ Cookbook", direct form I. */
export function butterworthHighPass(x: Float64Array, frequencyHz: number, sampleRate: number): Float64Array {
  const w0 = (2 * Math.PI * frequencyHz) / sampleRate
  const c = Math.cos(w0)
  const alpha = Math.sin(w0) / Math.SQRT2
  return filtered(x, [(1 + c) / 2, -(1 + c), (1 + c) / 2], [1 + alpha, -2 * c, 1 - alpha])
}

/** Butterworth low-pass, 12 dB per octave, likewise. */
export function butterworthLowPass(x: Float64Array, frequencyHz: number, sampleRate: number): Float64Array {
  const w0 = (2 * Math.PI * frequencyHz) / sampleRate
  const c = Math.cos(w0)
  const alpha = Math.sin(w0) / Math.SQRT2
  return filtered(x, [(1 - c) / 2, 1 - c, (1 - c) / 2], [1 + alpha, -2 * c, 1 - alpha])
}

type Three = readonly [number, number, number]

function filtered(x: Float64Array, b: Three, a: Three): Float64Array {
  const y = new Float64Array(x.length)
  for (let n = 0; n < x.length; n++) {
    const zeros = b[0] * (x[n] ?? 0) + b[1] * (x[n - 1] ?? 0) + b[2] * (x[n - 2] ?? 0)
    y[n] = (zeros - a[1] * (y[n - 1] ?? 0) - a[2] * (y[n - 2] ?? 0)) / a[0]
  }
  return y
}
