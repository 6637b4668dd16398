import { frameCount, type Sound } from '../sound/sound'

/**
 * Sound that may begin ahead of frame 0 of its take and go on behind its end. A linear-phase stage puts something out
 * before an abrupt start, and the stages behind it hear that: live, where nobody knows which frame is the first, and so
 * in renders too.
 */
export interface SoundWithLeads extends Sound {
  /** Frames of `channels` that lie ahead of frame 0; none if not given. */
  readonly leadInFrames?: number
  /** Frames of `channels` that lie behind the end of the take; none if not given. */
  readonly leadOutFrames?: number
}

/** Frames of the take itself. */
export function takeFrames({ leadInFrames = 0, leadOutFrames = 0, ...sound }: SoundWithLeads): number {
  return frameCount(sound) - leadInFrames - leadOutFrames
}

/** Copies of `channels`, cut or filled up with silence to `frames`, behind `silentFrames` more of silence. */
export function padded(
  channels: readonly Float32Array[],
  silentFrames: number,
  frames: number,
): Float32Array[] {
  return channels.map((samples) => {
    const copy = new Float32Array(silentFrames + frames)
    copy.set(samples.length > frames ? samples.subarray(0, frames) : samples, silentFrames)
    return copy
  })
}
