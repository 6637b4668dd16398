import {
  excerpt,
  frameCount,
  type Sound,
  type StageDoc,
  type StageInput,
  stageDefinitions,
  TRACE_HOP_FRAMES,
} from '../../core'
import type { StretchTrace } from '../evidence/evidence'
import { type ChangedPart, LiveTraces, warmUpSeconds } from '../evidence/live-traces'
import type { FrameRange } from '../evidence/matching'
import { Sweep } from '../evidence/sweep'
import { inSlices, nextTask } from './slices'

/** A piece, frames: what is newer than a request waits for the end of one, and warms up anew. */
export const PIECE_FRAMES = 2 ** 17
/** Sound behind the stretch that stages look ahead into or delay, seconds. */
const RUN_OUT_SECONDS = 0.1

/** What is asked while lanes are traced. */
interface GoOn {
  /** Between two pieces: one that is begun is given, for a hand that never rests. */
  isNewest(): boolean
  /** At any time: whether the take is still there. */
  stands(): boolean
}

/** What the lanes stand for: as long as it is the same, what they leave is of use. */
interface Ground {
  readonly samples: Float32Array | undefined
  readonly from: number
  readonly to: number
  readonly stageIds: string
}

/**
 * Traces the lanes that a change reaches, for pictures that follow the hand: the first of them, whole, then one after
 * the other those behind it. The first needs no sound behind its stage, so the lane of what is being moved is there
 * soonest; each lane behind it starts from what the stage of the one before worked on, and from its gains.
 */
export class LiveLanes {
  private ground: Ground | null = null
  private lanes: readonly Lane[] = []

  /**
   * Traces `stretch` once, piece by piece, each lane from where its last round ended. What is newer breaks the round
   * off, but each lane comes a piece further.
   */
  async trace(
    { sound, stages }: ChangedPart,
    stretch: FrameRange,
    goOn: GoOn,
    onTrace: (trace: StretchTrace) => void,
  ): Promise<void> {
    const earliest = Math.max(0, stretch.from - warmUpSeconds(stages) * sound.sampleRate)
    const firstHop = Math.floor(earliest / TRACE_HOP_FRAMES)
    const from = firstHop * TRACE_HOP_FRAMES
    // Run-out and all: lanes behind look ahead into it.
    const to = Math.ceil(stretch.to + RUN_OUT_SECONDS * sound.sampleRate)
    let source = excerpt(sound, from, to)
    const parts = partsOf(stages)
    this.stand(
      { samples: sound.channels[0], from, to, stageIds: stages.map(({ id }) => id).join() },
      source,
      parts,
    )
    for (const [k, part] of parts.entries()) {
      const lane = this.lanes[k]
      if (!lane || !goOn.stands()) return
      await lane.round({ sound: source, stages: part }, this.lanes[k - 1], goOn, (trace) =>
        onTrace({ ...trace, firstHop: firstHop + trace.firstHop }),
      )
      if (lane.kept) source = { ...source, channels: lane.kept.channels }
    }
  }

  /** Begins anew where the lanes stand for something else than before. */
  private stand(ground: Ground, source: Sound, parts: readonly (readonly StageDoc[])[]): void {
    const { ground: before } = this
    const isSame =
      before?.samples === ground.samples &&
      before?.from === ground.from &&
      before.to === ground.to &&
      before.stageIds === ground.stageIds &&
      this.lanes.length === parts.length
    if (isSame) return
    this.ground = ground
    this.lanes = parts.map((_, k) => new Lane(k + 1 < parts.length ? emptyInput(source) : null))
  }
}

/** For each stage that reduces gain, what there is from the one before it (or the start) up to it. */
function partsOf(stages: readonly StageDoc[]): (readonly StageDoc[])[] {
  const ends = stages.flatMap(({ on, kind }, i) => (on && stageDefinitions[kind].reducesGain ? i : []))
  return ends.map((end, k) => stages.slice(ends[k - 1] ?? 0, end + 1))
}

function emptyInput(sound: Sound): StageInput {
  const frames = frameCount(sound)
  const runOutFrames = Math.ceil(RUN_OUT_SECONDS * sound.sampleRate)
  return {
    channels: sound.channels.map(() => new Float32Array(frames)),
    gainDb: new Float32Array(frames + runOutFrames),
  }
}

/** One lane at work. */
class Lane {
  private readonly sweep = new Sweep(PIECE_FRAMES)
  /** Pieces done, over all rounds. */
  private pieces = 0

  /** @param kept where it leaves what its stage works on, for the lane behind it; null for the last */
  constructor(readonly kept: StageInput | null) {}

  /** Goes round once; where `isNewest` says no, only until the next piece is done. */
  async round(
    part: ChangedPart,
    ahead: Lane | undefined,
    { isNewest, stands }: GoOn,
    onTrace: (trace: StretchTrace) => void,
  ): Promise<void> {
    const end = frameCount(part.sound)
    if (this.waitsFor(ahead, end)) return
    const known = { firstGainDb: ahead?.kept?.gainDb ?? null, kept: this.kept }
    let traces: LiveTraces | undefined
    for (const { from, to } of this.sweep.round({ from: 0, to: end })) {
      if (traces?.at !== from) traces = new LiveTraces(part, { from, to: end }, known)
      await inSlices(traces.goOn(to), stands, (trace) => {
        if (trace !== null) onTrace(trace)
      })
      // Pieces are shorter than slices: what has arrived is handled between them.
      await nextTask()
      this.pieces++
      if (this.waitsFor(ahead, end) || !isNewest()) return
    }
  }

  /** On the first round of the lane ahead this one stays a piece behind it, for it looks ahead into what that leaves. */
  private waitsFor(ahead: Lane | undefined, end: number): boolean {
    return ahead !== undefined && ahead.pieces * PIECE_FRAMES < end && this.pieces + 1 >= ahead.pieces
  }
}
