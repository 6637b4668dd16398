import {
  type FrameRange,
  type SoundWithLeads,
  type StageDoc,
  TRACE_HOP_FRAMES,
  type Trace,
  TraceRun,
} from '../../core'

/** What is known of a stage's trace while a control moves: one stretch of it. */
export interface StretchTrace {
  readonly stageId: string
  /** Hop of the whole trace that `gainDb` starts at. */
  readonly firstHop: number
  /** As in a trace. */
  readonly gainDb: Float32Array
}

/**
 * A run begins before its stretch, so that detectors and gains have settled where that starts: by so many of the
 * time constants on the way (0.25 % of any start is left after six), and by what filters and detectors need. Behind
 * very slow ones the start is a little off, until all is worked out.
 */
const WARM_UP_TIME_CONSTANTS = 6
const LEAST_WARM_UP_SECONDS = 0.25
export const MOST_WARM_UP_SECONDS = 3

/**
 * Gain traces of one stretch of a sound, from its start on and piece by piece, for a picture that follows the hand.
 * Provisional: what is worked out from the whole take replaces them.
 */
export class LiveTraces {
  /** Frame up to which they have been given. */
  at: number
  private readonly run: TraceRun

  constructor(sound: SoundWithLeads, stages: readonly StageDoc[], stretch: FrameRange) {
    this.at = stretch.from
    this.run = new TraceRun(sound, stages, stretch, warmUpSeconds(stages) * sound.sampleRate)
  }

  /** Goes on to frame `to`, block by block; returns what has come of each stage since it last stopped. */
  *goOn(to: number): Generator<null, StretchTrace[], void> {
    const { run, at } = this
    this.at = to
    yield* run.goOn(to)
    const firstHop = Math.floor(at / TRACE_HOP_FRAMES)
    const endHop = Math.ceil(to / TRACE_HOP_FRAMES)
    return Array.from(run.traces(), ({ stageId, gainDb }) => ({
      stageId,
      firstHop,
      gainDb: gainDb.slice(firstHop - run.firstHop, endHop - run.firstHop),
    }))
  }
}

/** How long ahead of a stretch `stages` have to run for it to be right, seconds. */
function warmUpSeconds(stages: readonly StageDoc[]): number {
  const timeConstantsMs = stages.reduce(
    (sum, { on, settings }) =>
      on && 'releaseMs' in settings ? sum + settings.attackMs + settings.releaseMs : sum,
    0,
  )
  const seconds = LEAST_WARM_UP_SECONDS + (WARM_UP_TIME_CONSTANTS * timeConstantsMs) / 1000
  return Math.min(MOST_WARM_UP_SECONDS, seconds)
}

/** `trace` (null: no reduction anywhere) of a take of so many frames, with what is known of stretches of it put in. */
export function withStretches(
  trace: Trace | null,
  stretches: readonly StretchTrace[],
  frames: number,
): Trace {
  const whole = new Float32Array(Math.ceil(frames / TRACE_HOP_FRAMES))
  if (trace) whole.set(trace.gainDb.subarray(0, whole.length))
  putStretches(whole, stretches)
  return { hopFrames: TRACE_HOP_FRAMES, gainDb: whole }
}

/** Puts stretches, in order, into the gains of a whole trace, in place; what lies behind its end is dropped. */
export function putStretches(whole: Float32Array, stretches: readonly StretchTrace[]): void {
  for (const { firstHop, gainDb } of stretches)
    if (firstHop < whole.length) whole.set(gainDb.subarray(0, whole.length - firstHop), firstHop)
}
