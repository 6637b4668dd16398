import { frameCount, type Sound } from '../../core'
import type { FileHeader } from '../file-header'
import { doubtOf, soundSpan, type TimingDoubt } from './coded-span'
import { AAC_MOST_DELAY_FRAMES } from './m4a-span'
import { MP3_MOST_DELAY_FRAMES } from './mp3-span'

/** A decoded sound without the delays of its coding, as far as they are known. */
export interface AlignedSound {
  readonly sound: Sound
  /** What could not be told; null where the sound is aligned to the sample. */
  readonly timing: TimingDoubt | null
}

/** The longest delay of codings whose files need not state it, frames. */
const MOST_DELAY_FRAMES: ReadonlyMap<string, number> = new Map([
  ['MP3', MP3_MOST_DELAY_FRAMES],
  ['AAC', AAC_MOST_DELAY_FRAMES],
])

/**
 * Cuts what a browser decoded to the sound that was encoded. Browsers differ in what they leave of the silence that
 * encoders and decoders of lossy codings put ahead of it.
 */
export function alignSound(sound: Sound, { codec, span }: FileHeader): AlignedSound {
  const { sampleRate } = sound
  const decodedFrames = frameCount(sound)
  if (!span) {
    const mostDelay = MOST_DELAY_FRAMES.get(codec)
    if (mostDelay === undefined) return { sound, timing: null }
    return { sound, timing: { mostLateMs: (1000 * mostDelay) / sampleRate, missingMs: 0 } }
  }
  const found = soundSpan(decodedFrames, span)
  if (!found) return { sound, timing: doubtOf(decodedFrames, span, sampleRate) }
  if (found.from === 0 && found.to === decodedFrames) return { sound, timing: null }
  const channels = sound.channels.map((samples) => samples.slice(found.from, found.to))
  return { sound: { sampleRate, channels }, timing: null }
}
