import type { FrameRange } from '../../../core'

/** What a loop must fit into, frames. */
export interface LoopBounds {
  /** Length of the take. */
  readonly frames: number
  /** The shortest loop that can be played. */
  readonly shortest: number
}

/** The loop that starts at `frame`. A start that leaves too little before the end takes the end along. */
export function withStart({ from, to }: FrameRange, frame: number, bounds: LoopBounds): FrameRange {
  const start = Math.min(frame, bounds.frames - bounds.shortest)
  if (to - start >= bounds.shortest) return { from: start, to }
  return { from: start, to: Math.min(bounds.frames, start + (to - from)) }
}

/** The loop that ends at `frame`. An end that leaves too little behind the start takes the start along. */
export function withEnd({ from, to }: FrameRange, frame: number, { shortest }: LoopBounds): FrameRange {
  const end = Math.max(frame, shortest)
  if (end - from >= shortest) return { from, to: end }
  return { from: Math.max(0, end - (to - from)), to: end }
}

/** A range that is drawn from `anchor` on, made as long as the shortest loop where it is shorter, within the take. */
export function longEnough(
  { from, to }: FrameRange,
  anchor: number,
  { frames, shortest }: LoopBounds,
): FrameRange {
  if (to - from >= shortest) return { from, to }
  const start = anchor <= from ? from : to - shortest
  const within = Math.max(0, Math.min(start, frames - shortest))
  return { from: within, to: Math.min(frames, within + shortest) }
}
