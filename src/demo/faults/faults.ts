import { dbToGain } from '../../core'
import type { Biquad } from '../../core/primitives'
import { BiquadCascade, bell, highPass, highShelf, lowPass, whiteNoise } from '../../core/primitives'
import type { Segment } from '../song/layout'
import { levelPhrases, rms, toFrame, vowelRms } from '../song/levels'
import { sampleRate } from '../song/track'
import { burstStart } from '../voice/stops'
import type { CleanVoice } from '../voice/voice'
import { faultSizes as sizes } from './fault-sizes'
import { proximityShelf } from './proximity'
import { addRoom } from './room'

const butterworthQ = Math.SQRT1_2

/**
 * The clean voice with every fault of `fault-sizes.ts`: the singer too close to the microphone, the room, the
 * recording. The levels of the phrases are set behind the filters, so that they are in the take what their
 * labels say. Peak as stated there.
 */
export function spoil(voice: CleanVoice, segments: readonly Segment[], seed: number): Float32Array {
  const { box, top, room, rumble, noise } = sizes
  const colour = [
    proximityShelf(sizes.proximityMetres, sampleRate),
    bell(box.frequencyHz, box.gainDb, box.q, sampleRate),
    highShelf(top.frequencyHz, top.gainDb, butterworthQ, sampleRate),
  ]
  const take = new Float32Array(voice.body)
  const sibilance = new Float32Array(voice.sibilance)
  filter(take, colour)
  filter(sibilance, colour)
  const clean = rms(voice.sibilance) / vowelRms(voice.body, segments)
  const coloured = rms(sibilance) / vowelRms(take, segments)
  const sharpness = coloured > 0 ? dbToGain(sizes.sharpSibilanceDb) * (clean / coloured) : 0
  for (let i = 0; i < take.length; i += 1) take[i] = (take[i] ?? 0) + sharpness * (sibilance[i] ?? 0)
  addRoom(take, sampleRate, room.decaySeconds, room.levelDb)
  const levels = levelPhrases(take, segments, sizes.phraseLevelsDb)
  addPlosiveBursts(take, segments, levels)
  scaleToPeak(take, sizes.voicePeakDbfs)
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

/** Breath that strikes the microphone as each p opens; turbulence, so the room and the filters are not in it. */
function addPlosiveBursts(take: Float32Array, segments: readonly Segment[], levels: Float32Array): void {
  const { frequencyHz, decaySeconds, peakDb } = sizes.plosiveBurst
  const speed = 2 * Math.PI * frequencyHz
  const wave = (seconds: number) => Math.sin(speed * seconds) * Math.exp(-seconds / decaySeconds)
  // The decay sets in at once, so the wave peaks before and below 1: where its slope is 0.
  const gain = dbToGain(peakDb) / wave(Math.atan(speed * decaySeconds) / speed)
  for (const { symbol, startSeconds, endSeconds } of segments) {
    if (symbol !== 'p') continue
    const first = toFrame(burstStart(startSeconds, endSeconds))
    const last = Math.min(take.length, first + toFrame(8 * decaySeconds))
    for (let i = first; i < last; i += 1) {
      take[i] = (take[i] ?? 0) + gain * wave((i - first) / sampleRate) * (levels[i] ?? 0)
    }
  }
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
