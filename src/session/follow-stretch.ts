import type { FrameRange } from '../core'

/** Longest stretch whose traces follow a hand: more would not be there within a few frames of the screen. */
const LONGEST_SECONDS = 25

/**
 * The stretch of a take whose gain traces follow the hand on a control: what is seen, or, of a longer view, the part
 * from where the take plays. The rest follows when the hand rests.
 * @param seen null for the whole take
 */
export function liveStretch(
  seen: FrameRange | null,
  positionFrame: number,
  frames: number,
  sampleRate: number,
): FrameRange {
  const from = Math.max(0, Math.floor(seen?.from ?? 0))
  const to = Math.min(frames, Math.ceil(seen?.to ?? frames))
  const longest = LONGEST_SECONDS * sampleRate
  if (to - from <= longest) return { from, to }
  const start = positionFrame >= from && positionFrame < to ? Math.min(positionFrame, to - longest) : from
  return { from: start, to: start + longest }
}
