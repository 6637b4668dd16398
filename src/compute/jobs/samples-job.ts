import { excerpt, type FrameRange } from '../../core'
import type { SoundAddress } from '../address'
import type { Job } from './job'

/** The longest range that is given, frames: two screens of the finest peaks. */
export const MOST_SAMPLES = 2 ** 18

export interface SamplesInput extends SoundAddress {
  /** Whole frames, at most {@link MOST_SAMPLES} of them. */
  readonly range: FrameRange
}

/** Samples of a part of a sound. */
export interface RangeSamples {
  /** Frame of the take that they begin with. */
  readonly from: number
  readonly channels: readonly Float32Array[]
}

/**
 * The samples of a range of a sound, as far as it reaches.
 * @throws RangeError for a longer range than is given
 */
export const samplesJob: Job<SamplesInput, RangeSamples> = function* ({ take, stages, range }, tools) {
  const length = range.to - range.from
  if (!(length <= MOST_SAMPLES))
    throw new RangeError(`samples of ${length} frames (expected at most ${MOST_SAMPLES})`)
  const near = yield* tools.soundNear({ take, stages }, range)
  const from = Math.max(0, range.from)
  const { channels } = excerpt(near.sound, from - near.from, Math.max(from, range.to) - near.from)
  // Copied: the memory of the sound itself stays here.
  return { from, channels: channels.map((samples) => samples.slice()) }
}
