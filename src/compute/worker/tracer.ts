import {
  hopEnd,
  hopStart,
  type SoundWithLeads,
  type StageDoc,
  TRACE_HOP_FRAMES,
  takeFrames,
} from '../../core'
import type { StretchTrace } from '../evidence/evidence'
import { LiveTraces } from '../evidence/live-traces'
import type { FrameRange } from '../evidence/matching'
import { Sweep } from '../evidence/sweep'
import { inSlices, nextTask } from './slices'

/** A piece, frames: what is newer than a request waits for the end of one, and warms up anew. */
export const PIECE_FRAMES = 2 ** 17

/** A part of a take as it stands before the first stage that changes. */
export interface Ground {
  readonly sound: SoundWithLeads
  /** Hop of the take that the sound starts with. */
  readonly firstHop: number
  /** What is to be traced, frames of the sound: detectors settle ahead of it, stages look ahead into what is behind. */
  readonly stretch: FrameRange
}

/** Traces the lanes of stages on one ground, again and again, while a hand moves one of their settings. */
export class Tracer {
  private readonly sweep = new Sweep(PIECE_FRAMES)

  constructor(private readonly ground: Ground) {}

  /**
   * Goes round the stretch once, piece by piece, from where the last round ended. Where `isNewest` says no, only until
   * the next piece is done: a hand that never rests is followed everywhere.
   * @param onTraces told of each piece: of every stage that reduces gain its trace, by hops of the take
   */
  async round(
    stages: readonly StageDoc[],
    isNewest: () => boolean,
    onTraces: (traces: readonly StretchTrace[]) => void,
  ): Promise<void> {
    const { sound, firstHop, stretch } = this.ground
    let live: LiveTraces | undefined
    for (const { from, to } of this.sweep.round(stretch)) {
      if (live?.at !== from) live = new LiveTraces({ sound, stages }, { from, to: stretch.to })
      const traces = await inSlices(live.goOn(to), isAlwaysWanted, ignoreStep)
      onTraces((traces ?? []).map((trace) => ({ ...trace, firstHop: firstHop + trace.firstHop })))
      // Pieces are mostly shorter than slices: what has arrived is handled between them.
      await nextTask()
      if (!isNewest()) return
    }
  }
}

function isAlwaysWanted(): boolean {
  return true
}

function ignoreStep(): void {}

/**
 * Cuts the ground out of `sound`, a whole take: copies, to be given away.
 * @param settlingSeconds what detectors may need ahead of the stretch
 * @param runOutSeconds what stages may look ahead into behind it
 */
export function groundOf(
  sound: SoundWithLeads,
  stretch: FrameRange,
  settlingSeconds: number,
  runOutSeconds: number,
): Ground {
  const { sampleRate, channels, leadInFrames = 0, leadOutFrames = 0 } = sound
  const frames = takeFrames(sound)
  const first = hopStart(Math.max(0, stretch.from - settlingSeconds * sampleRate))
  const end = Math.min(frames + leadOutFrames, Math.ceil(stretch.to + runOutSeconds * sampleRate))
  // Whole hops, so that pieces share none.
  const from = hopStart(stretch.from)
  const to = Math.min(frames, hopEnd(stretch.to))
  return {
    sound: {
      sampleRate,
      // With as much in front as the whole has: at its start that is the lead-in.
      channels: channels.map((samples) => samples.slice(first, leadInFrames + end)),
      leadInFrames,
      leadOutFrames: Math.max(0, end - frames),
    },
    firstHop: first / TRACE_HOP_FRAMES,
    stretch: { from: from - first, to: to - first },
  }
}
