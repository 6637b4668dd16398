import type { StageDoc } from '../../core'
import { groundKey, laneGround } from '../lanes/lane-ground'
import { LiveTraces, type StretchTrace } from '../lanes/live-traces'
import type { TakeExcerpt } from '../lanes/take-excerpt'
import type { Job } from './job'

export interface LanesInput {
  readonly excerptKey: string
  /** The excerpt itself, where the worker does not have it yet. */
  readonly excerpt: TakeExcerpt | null
  /** The stages ahead of the first that changes. */
  readonly prefix: readonly StageDoc[]
  /** The rest. */
  readonly stages: readonly StageDoc[]
}

/**
 * Traces the lanes of one stretch once, piece by piece, from where the last request on the same ground ended. Where it
 * is not wanted any more, only until the next piece is done: a hand that never rests is followed everywhere. False where
 * the excerpt is missing.
 */
export const lanesJob: Job<LanesInput, boolean, readonly StretchTrace[]> = function* (
  { excerptKey, excerpt, prefix, stages },
  tools,
) {
  const { lanes } = tools
  if (excerpt) lanes.excerpt = excerpt
  if (lanes.excerpt?.key !== excerptKey) return false
  if (lanes.ground?.key !== groundKey(excerptKey, prefix))
    lanes.ground = yield* laneGround(lanes.excerpt, prefix)
  const { sound, firstHop, stretch, rounds } = lanes.ground
  let live: LiveTraces | undefined
  for (const { from, to } of rounds.round(stretch)) {
    if (live?.at !== from) live = new LiveTraces(sound, stages, { from, to: stretch.to })
    const steps = live.goOn(to)
    let step = steps.next()
    for (; !step.done; step = steps.next()) yield 0
    tools.tell(step.value.map((trace) => ({ ...trace, firstHop: firstHop + trace.firstHop })))
    yield 0
    if (!tools.isWanted()) break
  }
  return true
}
