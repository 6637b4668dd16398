import type { FrameRange } from '../sound/frame-range'
import type { ReductionReader } from '../stages/processor'

/** Gain of one stage along the take: the lowest in each hop, so that no peak is missed. */
export interface Trace {
  readonly hopFrames: number
  /** dB, 0 or less, one value a hop from the first frame on. */
  readonly gainDb: Float32Array
}

/** Frames a hop of a trace: 2.7 ms at 48 kHz, finer than a picture of a whole take shows. */
export const TRACE_HOP_FRAMES = 128

/** The first frame of the hop that `frame` lies in. */
export function hopStart(frame: number): number {
  return Math.floor(frame / TRACE_HOP_FRAMES) * TRACE_HOP_FRAMES
}

/** The end of the hop that `frame` lies in, or ends. */
export function hopEnd(frame: number): number {
  return Math.ceil(frame / TRACE_HOP_FRAMES) * TRACE_HOP_FRAMES
}

/** The hops of a trace that a range of the take touches. */
export function traceWithin({ hopFrames, gainDb }: Trace, { from, to }: FrameRange): Trace {
  return { hopFrames, gainDb: gainDb.slice(Math.floor(from / hopFrames), Math.ceil(to / hopFrames)) }
}

/** Collects gain reductions, frame by frame, into a trace. */
export class TraceBuilder implements ReductionReader {
  readonly trace: Trace

  /**
   * @param frames length of the take; frames outside it are ignored
   * @param nextFrame the frame of the take that is read first
   */
  constructor(
    private readonly frames: number,
    private nextFrame: number,
  ) {
    const gainDb = new Float32Array(Math.ceil(frames / TRACE_HOP_FRAMES))
    this.trace = { hopFrames: TRACE_HOP_FRAMES, gainDb }
  }

  read(reductionsDb: Float64Array, count: number): void {
    const { nextFrame: start } = this
    const { gainDb } = this.trace
    const end = Math.min(count, this.frames - start)
    for (let n = Math.max(0, -start); n < end; ) {
      const hop = Math.floor((start + n) / TRACE_HOP_FRAMES)
      const hopEnd = Math.min(end, (hop + 1) * TRACE_HOP_FRAMES - start)
      let largest = -(gainDb[hop] ?? 0)
      for (; n < hopEnd; n++) {
        const reduction = reductionsDb[n] ?? 0
        if (reduction > largest) largest = reduction
      }
      if (largest > 0) gainDb[hop] = -largest
    }
    this.nextFrame = start + count
  }
}
