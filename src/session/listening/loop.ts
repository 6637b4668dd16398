import type { FrameRange } from '../../core'

/** Length of the loop that setting one of its ends makes where there is none, seconds. */
const NEW_LOOP_SECONDS = 4

/** A loop shorter than this cannot be crossfaded at its seam, seconds. */
export const SHORTEST_LOOP_SECONDS = 0.1

/** The loop with one end at `frame`; the other end stays where it can. */
export function withLoopEnd(
  loop: FrameRange | null,
  end: 'from' | 'to',
  frame: number,
  sampleRate: number,
): FrameRange {
  const length = NEW_LOOP_SECONDS * sampleRate
  if (end === 'from') return { from: frame, to: loop && loop.to > frame ? loop.to : frame + length }
  return { from: loop && loop.from < frame ? loop.from : frame - length, to: frame }
}

/** A loop in whole frames of a take that is so long; null where too little of it is left. */
export function loopWithin(loop: FrameRange | null, frames: number, sampleRate: number): FrameRange | null {
  if (!loop) return null
  const from = Math.round(Math.max(0, loop.from))
  const to = Math.round(Math.min(loop.to, frames))
  return to - from >= SHORTEST_LOOP_SECONDS * sampleRate ? { from, to } : null
}
