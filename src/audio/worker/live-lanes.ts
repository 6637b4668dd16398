import {
  excerpt,
  frameCount,
  type Sound,
  type StageDoc,
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
const LEAST_PIECES = 3
/** Sound behind the stretch that stages look ahead into or delay, seconds. */
const RUN_OUT_SECONDS = 0.1

/** What is asked while lanes are traced. */
interface GoOn {
  /** Between two pieces: one that is begun is given, for a hand that never rests. */
  isNewest(): boolean
  /** At any time: whether the take is still there. */
  stands(): boolean
}

/** One lane on the bench: how far it has come, and what it puts out for the lane behind it; null for the last. */
interface Lane {
  readonly sweep: Sweep
  readonly output: Sound | null
}

/** What the lanes stand for: as long as it is the same, their outputs are of use. */
interface Ground {
  readonly samples: Float32Array | undefined
  readonly from: number
  readonly to: number
  readonly stageIds: string
}

/**
 * Traces the lanes that a change reaches, for pictures that follow the hand: the first of them, whole, then one after
 * the other those behind it, each from what the lane before has put out. So the lane of what is being moved comes
 * first, and nothing is worked out twice.
 */
export class LiveLanes {
  private ground: Ground | null = null
  private lanes: readonly Lane[] = []

  /**
   * Traces `stretch` once, piece by piece, each lane from where its last round ended. What is newer breaks the round
   * off, but each lane comes at least a piece further, and none past the one before it.
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
    const to = Math.ceil(stretch.to + RUN_OUT_SECONDS * sound.sampleRate)
    let source = excerpt(sound, from, to)
    const parts = partsOf(stages)
    this.stand(
      { samples: sound.channels[0], from, to, stageIds: stages.map(({ id }) => id).join() },
      source,
      parts,
    )
    // Run-out and all: lanes behind look ahead into it.
    const seen = { from: 0, to: frameCount(source) }
    for (const [k, part] of parts.entries()) {
      const lane = this.lanes[k]
      if (!lane || !goOn.stands()) return
      const least = k === 0 ? 1 : LEAST_PIECES
      await round({ sound: source, stages: part }, seen, lane, goOn, least, (trace) =>
        onTrace({ ...trace, firstHop: firstHop + trace.firstHop }),
      )
      source = lane.output ?? source
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
    this.lanes = parts.map((_, k) => ({
      sweep: new Sweep(PIECE_FRAMES),
      output: k + 1 < parts.length ? silenceLike(source) : null,
    }))
  }
}

/** Stages cut behind each that reduces gain; those behind the last such are left out. */
function partsOf(stages: readonly StageDoc[]): (readonly StageDoc[])[] {
  const parts: StageDoc[][] = []
  let part: StageDoc[] = []
  for (const stage of stages) {
    part.push(stage)
    if (!stage.on || !stageDefinitions[stage.kind].reducesGain) continue
    parts.push(part)
    part = []
  }
  return parts
}

function silenceLike({ sampleRate, channels }: Sound): Sound {
  return { sampleRate, channels: channels.map(({ length }) => new Float32Array(length)) }
}

async function round(
  part: ChangedPart,
  stretch: FrameRange,
  { sweep, output }: Lane,
  { isNewest, stands }: GoOn,
  leastPieces: number,
  onTrace: (trace: StretchTrace) => void,
): Promise<void> {
  let traces: LiveTraces | undefined
  let pieces = 0
  for (const { from, to } of sweep.round(stretch)) {
    if (traces?.at !== from) traces = new LiveTraces(part, { from, to: stretch.to }, output?.channels)
    await inSlices(traces.goOn(to), stands, (trace) => trace && onTrace(trace))
    // Pieces are shorter than slices: what has arrived is handled between them.
    await nextTask()
    pieces++
    if (pieces >= leastPieces && !isNewest()) return
  }
}
