import { frameCount, type Sound } from './sound'

/** A stretch of a sound, in memory of its own. */
export interface SoundPart {
  readonly fromFrame: number
  readonly channels: readonly Float32Array<ArrayBuffer>[]
}

/** Copied within about a hundredth of a second, so that the page goes on meanwhile. */
const PART_FRAMES = 2 ** 20

/** Copies of a sound, part by part and in order, to be given away: their memory may be moved. At least one. */
export function* soundParts(sound: Sound, partFrames = PART_FRAMES): Generator<SoundPart, void, void> {
  const frames = frameCount(sound)
  let fromFrame = 0
  do {
    const end = fromFrame + partFrames
    const channels = sound.channels.map((samples) => samples.slice(fromFrame, end))
    yield { fromFrame, channels }
    fromFrame = end
  } while (fromFrame < frames)
}
