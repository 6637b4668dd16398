import { frameCount, type Sound } from './sound'

/** Mean of all channels, in a new array. */
export function monoMix(sound: Sound): Float32Array {
  const mix = new Float32Array(frameCount(sound))
  for (const samples of sound.channels) {
    for (let i = 0; i < mix.length; i++) mix[i] = (mix[i] ?? 0) + (samples[i] ?? 0) / sound.channels.length
  }
  return mix
}
