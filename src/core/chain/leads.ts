import { excerpt, frameCount, type Sound } from '../sound/sound'
import { finished, type Steps } from '../sound/steps'

/**
 * Sound that may begin before frame 0 of its take and continue after its end. A linear-phase stage rings before an
 * abrupt start, and the stages after it hear that: live, where no frame is known to be the first, and so in renders too.
 */
export interface SoundWithLeads extends Sound {
  /** Frames of `channels` before frame 0; 0 by default. */
  readonly leadInFrames?: number
  /** Frames of `channels` after the end of the take; 0 by default. */
  readonly leadOutFrames?: number
}

/** Frames of the take itself. */
export function takeFrames({ leadInFrames = 0, leadOutFrames = 0, ...sound }: SoundWithLeads): number {
  return frameCount(sound) - leadInFrames - leadOutFrames
}

/** The take's own frames of `sound`: views of its memory, aligned with the take. */
export function alignedSound(sound: SoundWithLeads): Sound {
  const { sampleRate, channels, leadInFrames = 0 } = sound
  return excerpt({ sampleRate, channels }, leadInFrames, leadInFrames + takeFrames(sound))
}

/** Frames of one channel copied in one step: about 2 ms, new memory included. */
const COPY_FRAMES = 2 ** 20

/** Copies of `channels`, cut or padded with silence to `frames`, after `silentFrames` more of silence. */
export function padded(
  channels: readonly Float32Array[],
  silentFrames: number,
  frames: number,
): Float32Array[] {
  return finished(paddedSteps(channels, silentFrames, frames))
}

/**
 * {@link padded} in steps.
 * @param into memory to write the copies to, each of it long enough; new memory where it is left out
 */
export function* paddedSteps(
  channels: readonly Float32Array[],
  silentFrames: number,
  frames: number,
  into?: readonly Float32Array[],
): Steps<Float32Array[]> {
  const copies: Float32Array[] = []
  for (const [c, samples] of channels.entries()) {
    const end = Math.min(samples.length, frames)
    const copy = into?.[c]?.subarray(0, silentFrames + frames) ?? new Float32Array(silentFrames + frames)
    if (into) copy.fill(0, 0, silentFrames).fill(0, silentFrames + end)
    for (let from = 0; from < end; from += COPY_FRAMES) {
      const to = Math.min(end, from + COPY_FRAMES)
      copy.set(samples.subarray(from, to), silentFrames + from)
      yield (c + to / end) / channels.length
    }
    copies.push(copy)
  }
  return copies
}
