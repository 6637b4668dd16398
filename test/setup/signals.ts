import { dbToGain } from '../../src/core/sound/decibels'
import type { Sound } from '../../src/core/sound/sound'

/** A stretch of tone: its length and its peak level, or null for silence. */
export type Stretch = readonly [seconds: number, peakDbfs: number | null]

/** One channel of a sine that runs on without a break of phase while its level steps. */
export function steppedSine(
  sampleRate: number,
  stretches: readonly Stretch[],
  frequencyHz = 1000,
): Float32Array {
  const total = stretches.reduce((sum, [seconds]) => sum + seconds, 0)
  const samples = new Float32Array(Math.round(total * sampleRate))
  let seconds = 0
  for (const [length, peakDbfs] of stretches) {
    const gain = peakDbfs === null ? 0 : dbToGain(peakDbfs)
    const end = Math.round((seconds + length) * sampleRate)
    for (let i = Math.round(seconds * sampleRate); i < end; i++) {
      samples[i] = gain * Math.sin((2 * Math.PI * frequencyHz * i) / sampleRate)
    }
    seconds += length
  }
  return samples
}

/** The same samples in `count` channels. */
export function inChannels(sampleRate: number, samples: Float32Array, count: number): Sound {
  return { sampleRate, channels: Array.from({ length: count }, () => samples) }
}

/** The stereo tone of EBU Tech 3341 and 3342: 1 kHz, both channels in phase, levels per channel. */
export function stereoTone(sampleRate: number, stretches: readonly Stretch[]): Sound {
  return inChannels(sampleRate, steppedSine(sampleRate, stretches), 2)
}

/** Uniform random numbers in [0, 1) from a 32-bit seed: the public-domain generator mulberry32. */
export function mulberry32(seed: number): () => number {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let mixed = Math.imul(state ^ (state >>> 15), state | 1)
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296
  }
}

/** White noise, uniform in +-gain(seconds); the channels are drawn in turn, frame by frame. */
export function noise(
  sampleRate: number,
  seconds: number,
  channelCount: number,
  seed: number,
  gain: (seconds: number) => number,
): Sound {
  const random = mulberry32(seed)
  const frames = Math.round(seconds * sampleRate)
  const channels = Array.from({ length: channelCount }, () => new Float32Array(frames))
  for (let i = 0; i < frames; i++) {
    const size = gain(i / sampleRate)
    for (const samples of channels) samples[i] = size * (2 * random() - 1)
  }
  return { sampleRate, channels }
}

/** `sound` played `times` times in a row. */
export function repeated(sound: Sound, times: number): Sound {
  return { ...sound, channels: sound.channels.map((samples) => joined(Array(times).fill(samples))) }
}

/** Arrays of samples one after the other. */
export function joined(parts: readonly Float32Array[]): Float32Array {
  const samples = new Float32Array(parts.reduce((sum, part) => sum + part.length, 0))
  let at = 0
  for (const part of parts) {
    samples.set(part, at)
    at += part.length
  }
  return samples
}

/** `sound` with every sample multiplied by `gain`. */
export function scaled(sound: Sound, gain: number): Sound {
  return { ...sound, channels: sound.channels.map((samples) => samples.map((x) => x * gain)) }
}
