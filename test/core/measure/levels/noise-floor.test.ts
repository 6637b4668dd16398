import { describe, expect, it } from 'vitest'
import { noiseFloorDbfs, pausesOf } from '../../../../src/core/measure/levels/noise-floor'
import { inChannels, mulberry32, noise } from '../../../setup/signals'

const sampleRate = 48_000
const SECONDS = 12

/**
 * Pink noise from about 20 Hz up: random numbers, number k drawn anew every 2^k frames (R. F. Voss's method, told by
 * M. Gardner, Scientific American 238(4), 1978; from memory).
 */
function pinkNoise(seed: number): Float32Array {
  const random = mulberry32(seed)
  const held = Array.from({ length: 12 }, () => random() - 0.5)
  return Float32Array.from({ length: SECONDS * sampleRate }, (_, i) => {
    let octave = 0
    while (octave < 11 && (i >> octave) % 2 === 0) octave++
    held[octave] = random() - 0.5
    return held.reduce((sum, x) => sum + x, random() - 0.5)
  })
}

function whiteNoise(seed: number): Float32Array {
  return noise(sampleRate, SECONDS, 1, seed, () => 1).channels[0] ?? new Float32Array()
}

/** Mains hum of 50 Hz, or 60, a little off as mains are, with odd harmonics, and hiss 20 dB below it. */
function hum(seed: number): Float32Array {
  const hz = seed % 2 === 0 ? 49.94 : 60.05
  return whiteNoise(seed).map((x, i) =>
    [1, 3, 5].reduce((sum, k) => sum + Math.sin((2 * Math.PI * k * hz * i) / sampleRate + k) / k, 0.12 * x),
  )
}

const kinds = { white: whiteNoise, pink: pinkNoise, hum }
const seeds = [1, 2, 3, 4]
const cases = (Object.keys(kinds) as (keyof typeof kinds)[]).flatMap((kind) =>
  seeds.map((seed) => [kind, seed] as const),
)

function levelDb(samples: Float32Array, isCounted: (seconds: number) => boolean = () => true): number {
  let [squares, count] = [0, 0]
  for (let i = 0; i < samples.length; i++) {
    if (!isCounted(i / sampleRate)) continue
    squares += (samples[i] ?? 0) ** 2
    count++
  }
  return 10 * Math.log10(squares / count)
}

/** The quietest windows of a noise lie below its level; the floor must not. */
const LARGEST_ERROR_DB = 0.3

describe('the noise floor is the level of the noise', () => {
  it.each(cases)('%s noise alone (seed %i)', (kind, seed) => {
    const samples = kinds[kind](seed).map((x) => 0.001 * x)
    const floor = noiseFloorDbfs(inChannels(sampleRate, samples, 1)) ?? Number.NaN
    expect(Math.abs(floor - levelDb(samples))).toBeLessThan(LARGEST_ERROR_DB)
  })

  it.each(cases)('%s noise in the pauses of singing that fades out over a second (seed %i)', (kind, seed) => {
    const fading = (seconds: number) => (seconds % 3 < 1.2 ? 1 : 10 ** ((-60 * ((seconds % 3) - 1.2)) / 20))
    const room = kinds[kind](seed).map((x) => 0.001 * x)
    const take = room.map((x, i) => x + 0.3 * fading(i / sampleRate) * Math.sin(i / 17))
    const floor = noiseFloorDbfs(inChannels(sampleRate, take, 1)) ?? Number.NaN
    // What was sung 60 dB below full scale and less is faint beside the noise.
    const inPauses = levelDb(room, (seconds) => seconds % 3 > 2.3)
    expect(Math.abs(floor - inPauses)).toBeLessThan(2 * LARGEST_ERROR_DB)
  })
})

describe('pausesOf', () => {
  it('are stretches without their first and last window, in order', () => {
    const take = noise(sampleRate, 4, 1, 2, (t) => (t % 2 < 1 ? 0.3 : 0.001))
    const windows = (from: number, to: number) => Array.from({ length: to - from }, (_, i) => from + i)
    // Windows of 50 ms: one to two seconds are 20 to 39; the last pause goes on to the end.
    expect(pausesOf(take)).toEqual([...windows(21, 39), ...windows(61, 80)])
  })

  it('where none is three windows long, the quietest tenth of all', () => {
    const take = noise(sampleRate, 4, 1, 2, (t) => (t % 1 < 0.9 ? 0.3 : 0.001))
    expect(pausesOf(take)?.toSorted((a, b) => a - b)).toEqual([18, 19, 38, 39, 58, 59, 78, 79])
  })
})
