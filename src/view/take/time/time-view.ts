import type { FrameRange } from '../../../core'

/** The range of the take that is seen; its ends may lie between frames. */
export type TimeView = FrameRange

/** The whole take. */
export function wholeTake(frames: number): TimeView {
  return { from: 0, to: Math.max(1, frames) }
}

/**
 * The view zoomed by `factor` (2: half as long) with the frame `anchor` staying where it is.
 * @param frames length of the take
 * @param leastFrames the shortest stretch that can be seen
 */
export function zoomed(
  view: TimeView,
  factor: number,
  anchor: number,
  frames: number,
  leastFrames: number,
): TimeView {
  const length = Math.min(frames, Math.max(leastFrames, (view.to - view.from) / factor))
  const share = (anchor - view.from) / (view.to - view.from)
  return within({ from: anchor - share * length, to: anchor + (1 - share) * length }, frames)
}

/** The view moved later by `by` frames, as far as the take goes. */
export function moved(view: TimeView, by: number, frames: number): TimeView {
  return within({ from: view.from + by, to: view.to + by }, frames)
}

/** A view of `range` with a little air at both ends. */
export function around(range: FrameRange, frames: number, leastFrames: number): TimeView {
  const air = Math.max((range.to - range.from) * 0.08, (leastFrames - (range.to - range.from)) / 2)
  const length = Math.min(frames, range.to - range.from + 2 * air)
  return within({ from: range.from - air, to: range.from - air + length }, frames)
}

/** How far right of the view's left edge a frame stands, in the unit of `width`. */
export function xOfFrame(view: TimeView, frame: number, width: number): number {
  return ((frame - view.from) / (view.to - view.from)) * width
}

/** The frame at `x`, not outside the take. */
export function frameAtX(view: TimeView, x: number, width: number, frames: number): number {
  const frame = view.from + (x / width) * (view.to - view.from)
  return Math.min(frames, Math.max(0, frame))
}

/** Whether what was seen at frame `before` is no longer seen at frame `now`. */
export function isLeaving(view: TimeView, before: number, now: number): boolean {
  const isSeen = (frame: number) => frame >= view.from && frame <= view.to
  return isSeen(before) && !isSeen(now)
}

function within({ from, to }: TimeView, frames: number): TimeView {
  const length = to - from
  if (length >= frames) return wholeTake(frames)
  const start = Math.min(Math.max(0, from), frames - length)
  return { from: start, to: start + length }
}
