import type { FrameRange } from './time-view'

/** Length of the loop that setting one of its ends makes where there is none, seconds. */
const NEW_LOOP_SECONDS = 4

/** The loop with another beginning, in frames; its end stays where it can. */
export function loopFrom(from: number, loop: FrameRange | null, sampleRate: number): FrameRange {
  return { from, to: loop && loop.to > from ? loop.to : from + NEW_LOOP_SECONDS * sampleRate }
}

/** The loop with another end, in frames; its beginning stays where it can. */
export function loopTo(to: number, loop: FrameRange | null, sampleRate: number): FrameRange {
  return { from: loop && loop.from < to ? loop.from : to - NEW_LOOP_SECONDS * sampleRate, to }
}
