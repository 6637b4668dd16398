import { bell, highPass, highShelf, lowPass } from '../core/dsp/bilinear'
import type { Biquad } from '../core/dsp/biquad'
import { BiquadCascade } from '../core/dsp/biquad-cascade'
import { dbToGain } from '../core/dsp/decibels'
import { burstStart } from './controls'
import { faultSizes as sizes } from './fault-sizes'
import type { Segment } from './layout'
import { proximityShelf } from './proximity'
import { whiteNoise } from './random'
import { addRoom, rms } from './room'
import { atSampleRate, fillTrack, newTrack, sampleRate, smoothed } from './track'
import { type CleanVoice, toFrame } from './voice'

const butterworthQ = Math.SQRT1_2

/**
 * The clean voice with every fault of `fault-sizes.ts`, in the order in which they would come about: the
 * singer, the air at the microphone, the room, the recording. Peak as stated there.
 */
export function spoil(
  voice: CleanVoice,
  segments: readonly Segment[],
  seconds: number,
  seed: number,
): Float32Array {
  const take = performed(voice, segments, seconds)
  filter(take, [proximityShelf(sizes.proximityMetres, sampleRate)])
  addRoom(take, sampleRate, sizes.room.decaySeconds, sizes.room.levelDb)
  const { box, top } = sizes
  filter(take, [
    bell(box.frequencyHz, box.gainDb, box.q, sampleRate),
    highShelf(top.frequencyHz, top.gainDb, butterworthQ, sampleRate),
  ])
  // The shelf of the proximity rise lifts what little direct current there is; a preamplifier stops it.
  filter(take, [highPass(sizes.preamplifierHz, butterworthQ, sampleRate)])
  scaleToPeak(take, sizes.voicePeakDbfs)
  const { rumble, noise } = sizes
  addNoise(take, rumble.levelDbfs, seed, [
    highPass(rumble.fromHz, butterworthQ, sampleRate),
    lowPass(rumble.toHz, butterworthQ, sampleRate),
    lowPass(rumble.toHz, butterworthQ, sampleRate),
  ])
  addNoise(take, noise.levelDbfs, seed + 1, [
    highPass(noise.fromHz, butterworthQ, sampleRate),
    highShelf(noise.toHz, noise.topDb, 0.5, sampleRate),
  ])
  return take
}

/** The phrases at their uneven levels, the sibilants too strong, and bursts of breath after each p. */
function performed(voice: CleanVoice, segments: readonly Segment[], seconds: number): Float32Array {
  const levels = newTrack(seconds)
  for (const { startSeconds, endSeconds, phrase } of segments) {
    fillTrack(levels, startSeconds, endSeconds, dbToGain(sizes.phraseLevelsDb[phrase] ?? 0))
  }
  const gains = atSampleRate(smoothed(levels, 0.02), voice.body.length)
  const sharpness = dbToGain(sizes.sharpSibilanceDb)
  const bursts = plosiveBursts(segments, voice.body.length)
  return gains.map((gain, i) => {
    const voiced = (voice.body[i] ?? 0) + sharpness * (voice.sibilance[i] ?? 0)
    return gain * (voiced + (bursts[i] ?? 0))
  })
}

function plosiveBursts(segments: readonly Segment[], frames: number): Float64Array {
  const { frequencyHz, decaySeconds, peakDb } = sizes.plosiveBurst
  const bursts = new Float64Array(frames)
  const peak = dbToGain(peakDb)
  for (const { symbol, startSeconds, endSeconds } of segments) {
    if (symbol !== 'p') continue
    const first = toFrame(burstStart(startSeconds, endSeconds))
    const last = Math.min(frames, first + toFrame(8 * decaySeconds))
    for (let i = first; i < last; i += 1) {
      const since = (i - first) / sampleRate
      const wave = Math.sin(2 * Math.PI * frequencyHz * since) * Math.exp(-since / decaySeconds)
      bursts[i] = (bursts[i] ?? 0) + peak * wave
    }
  }
  return bursts
}

function filter(samples: Float32Array, sections: readonly Biquad[]): void {
  const cascade = new BiquadCascade(sections.length, 1, 0)
  cascade.set(sections)
  cascade.process([samples], samples.length)
}

function scaleToPeak(samples: Float32Array, peakDbfs: number): void {
  let peak = 0
  for (const sample of samples) peak = Math.max(peak, Math.abs(sample))
  const scale = dbToGain(peakDbfs) / peak
  for (let i = 0; i < samples.length; i += 1) samples[i] = (samples[i] ?? 0) * scale
}

function addNoise(samples: Float32Array, levelDbfs: number, seed: number, sections: readonly Biquad[]): void {
  const noise = new Float32Array(whiteNoise(samples.length, seed))
  filter(noise, sections)
  const scale = dbToGain(levelDbfs) / rms(noise)
  for (let i = 0; i < samples.length; i += 1) samples[i] = (samples[i] ?? 0) + scale * (noise[i] ?? 0)
}
