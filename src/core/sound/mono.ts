import { frameCount, type Sound } from './sound'

/**
 * Writes the mean of all channels of `sound`, from frame `from` on, to all of `target`; silence where `target` reaches
 * beyond either end of the sound. Rounded to 32 bits after each channel.
 *
 * @param from first frame, which may lie ahead of frame 0
 */
export function mixToMono(sound: Sound, from: number, target: Float32Array): void {
  const { channels } = sound
  const start = Math.max(0, -from)
  const end = Math.min(target.length, frameCount(sound) - from)
  target.fill(0)
  for (const samples of channels) {
    for (let i = start; i < end; i++) {
      target[i] = (target[i] ?? 0) + (samples[from + i] ?? 0) / channels.length
    }
  }
}
