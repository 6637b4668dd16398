import {
  type ChainDoc,
  excerpt,
  frameCount,
  type Rendering,
  renderSteps,
  type Sound,
  type StageDoc,
  sameStage,
  stageDefinitions,
  TRACE_HOP_FRAMES,
  type Trace,
} from '../../core'
import type { StretchTrace } from './evidence'
import type { FrameRange } from './matching'

/**
 * A run begins before its stretch, so that detectors and gains have settled where that starts: by so many of the
 * time constants on the way (0.25 % of any start is left after six), and by what filters and detectors need. Behind
 * very slow ones the start is a little off, until all is worked out.
 */
const WARM_UP_TIME_CONSTANTS = 6
const LEAST_WARM_UP_SECONDS = 0.25
const MOST_WARM_UP_SECONDS = 3
/** Carried on this long behind it: more than any stage looks ahead or delays. */
const RUN_OUT_SECONDS = 0.1

/**
 * Gain traces of one stretch of the take, for a picture that follows the hand: only from the first stage that
 * differs from `previous` up to the last that reduces gain, each given as soon as it is there. Provisional: what is
 * worked out from the whole take replaces them.
 * @returns steps of one block: the trace of a stage that is done, or null
 */
export function* liveTraces(
  take: Sound,
  chain: ChainDoc,
  previous: Rendering | undefined,
  stretch: FrameRange,
): Generator<StretchTrace | null, void, void> {
  const taps = previous?.kept?.source === take ? previous.kept.taps : []
  const changed = chain.stages.findIndex((stage, k) => !sameStage(stage, taps[k]?.stage))
  const last = chain.stages.findLastIndex(({ kind, on }) => on && stageDefinitions[kind].reducesGain)
  if (changed < 0) return
  const stages = chain.stages.slice(changed, last + 1)
  const run = runOf(take, stretch, warmUpSeconds(stages))
  const channels = taps[changed - 1]?.channels ?? take.channels
  let working = excerpt({ sampleRate: take.sampleRate, channels }, run.from, run.to)
  for (const stage of stages) {
    if (!stage.on) continue
    const steps = renderSteps(working, { ...chain, stages: [stage] })
    let step = steps.next()
    while (!step.done) {
      yield null
      step = steps.next()
    }
    working = step.value.sound
    const trace = step.value.traces.get(stage.id)
    if (trace) yield cut(stage.id, trace, run.from, stretch, frameCount(take))
  }
}

function warmUpSeconds(stages: readonly StageDoc[]): number {
  const timeConstantsMs = stages.reduce(
    (sum, { on, settings }) =>
      on && 'releaseMs' in settings ? sum + settings.attackMs + settings.releaseMs : sum,
    0,
  )
  const seconds = LEAST_WARM_UP_SECONDS + (WARM_UP_TIME_CONSTANTS * timeConstantsMs) / 1000
  return Math.min(MOST_WARM_UP_SECONDS, seconds)
}

/** What has to be run to know the stretch; it starts where a hop of the traces does. */
function runOf(take: Sound, { from, to }: FrameRange, warmUp: number): FrameRange {
  const start = Math.max(0, from - warmUp * take.sampleRate)
  return {
    from: Math.floor(start / TRACE_HOP_FRAMES) * TRACE_HOP_FRAMES,
    to: Math.min(frameCount(take), Math.ceil(to + RUN_OUT_SECONDS * take.sampleRate)),
  }
}

/** The part of a trace of frames from `runFrom` on that lies in the stretch. */
function cut(
  stageId: string,
  trace: Trace,
  runFrom: number,
  stretch: FrameRange,
  frames: number,
): StretchTrace {
  const firstHop = Math.floor(stretch.from / TRACE_HOP_FRAMES)
  const endHop = Math.ceil(Math.min(stretch.to, frames) / TRACE_HOP_FRAMES)
  const skipped = runFrom / TRACE_HOP_FRAMES
  return { stageId, firstHop, gainDb: trace.gainDb.slice(firstHop - skipped, endHop - skipped) }
}

/** `trace` (null: no reduction anywhere) of a take of so many frames, with what is known of stretches of it put in. */
export function withStretches(
  trace: Trace | null,
  stretches: readonly StretchTrace[],
  frames: number,
): Trace {
  const whole = new Float32Array(Math.ceil(frames / TRACE_HOP_FRAMES))
  if (trace) whole.set(trace.gainDb.subarray(0, whole.length))
  for (const { firstHop, gainDb } of stretches)
    whole.set(gainDb.subarray(0, Math.max(0, whole.length - firstHop)), firstHop)
  return { hopFrames: TRACE_HOP_FRAMES, gainDb: whole }
}
