import { frameCount } from '../../core'
import type { HashedTake } from '../address'
import type { ToWorker } from '../messages'

/** Copied within about a hundredth of a second, so that the page goes on meanwhile. */
const PART_FRAMES = 2 ** 20

/** Copies of a take, part by part: its memory may be moved. At least one. */
export function* takeParts(
  { hash, sound }: HashedTake,
  partFrames = PART_FRAMES,
): Generator<Extract<ToWorker, { readonly type: 'take-part' }>, void, void> {
  const frames = frameCount(sound)
  let fromFrame = 0
  do {
    const end = fromFrame + partFrames
    const channels = sound.channels.map((samples) => samples.slice(fromFrame, end))
    yield { type: 'take-part', hash, fromFrame, channels }
    fromFrame = end
  } while (fromFrame < frames)
}
