import {
  type FrameRange,
  hopEnd,
  hopStart,
  type Sound,
  type SoundWithLeads,
  TRACE_HOP_FRAMES,
} from '../../core'

/** A part of a take, copied out of it to be given away. */
export interface TakeExcerpt {
  readonly key: string
  readonly sound: SoundWithLeads
  /** Hop of the take that the sound starts with. */
  readonly firstHop: number
  /** What is to be traced, frames of the sound: detectors settle ahead of it, stages look ahead into what is behind. */
  readonly stretch: FrameRange
}

/**
 * Copies out of `take` what is needed to trace `stretch` of it.
 * @param settlingSeconds what detectors may need ahead of the stretch
 * @param runOutSeconds what stages may look ahead into behind it
 */
export function takeExcerpt(
  key: string,
  { sampleRate, channels }: Sound,
  stretch: FrameRange,
  settlingSeconds: number,
  runOutSeconds: number,
): TakeExcerpt {
  const frames = channels[0]?.length ?? 0
  const first = hopStart(Math.max(0, stretch.from - settlingSeconds * sampleRate))
  const end = Math.min(frames, Math.ceil(stretch.to + runOutSeconds * sampleRate))
  // Whole hops, so that pieces share none.
  const from = hopStart(stretch.from)
  const to = Math.min(frames, hopEnd(stretch.to))
  return {
    key,
    sound: { sampleRate, channels: channels.map((samples) => samples.slice(first, end)) },
    firstHop: first / TRACE_HOP_FRAMES,
    stretch: { from: from - first, to: to - first },
  }
}
