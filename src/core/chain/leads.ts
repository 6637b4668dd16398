import { frameCount, type Sound } from '../sound/sound'

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

/** Copies of `channels`, cut or padded with silence to `frames`, after `silentFrames` more of silence. */
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
