import type { FrameRange } from '../../../core'

/** A pointer that moved less than this was a click, pixels. */
export const CLICK_SLOP_PX = 4
/** A press this near an end of the loop drags that end, pixels: half of what is wide enough for a mouse, or a finger. */
const EDGE_SLOP_PX = 6
const TOUCH_SLOP_PX = 22

/** How near an end of the loop a press with this kind of pointer drags that end, pixels. */
export function edgeSlopPx(pointerType: string): number {
  return pointerType === 'touch' ? TOUCH_SLOP_PX : EDGE_SLOP_PX
}

/**
 * Where a drag that starts at `frame` is anchored: at the far end of the loop when it drags the near end,
 * else where it started.
 * @param slopFrames how near counts as on an end
 */
export function anchorOf(frame: number, loop: FrameRange | null, slopFrames: number): number {
  if (!loop) return frame
  const toStart = Math.abs(frame - loop.from)
  const toEnd = Math.abs(frame - loop.to)
  if (Math.min(toStart, toEnd) > slopFrames) return frame
  return toStart < toEnd ? loop.to : loop.from
}

/** The range between two frames, whichever comes first. */
export function between(a: number, b: number): FrameRange {
  return a < b ? { from: a, to: b } : { from: b, to: a }
}
