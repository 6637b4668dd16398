import { type FrameRange, frameCount, hopStart, type StageDoc, stageDefinitions } from '../../core'
import type { HashedTake } from '../address'
import { MOST_WARM_UP_SECONDS, type StretchTrace } from '../lanes/live-traces'
import { takeExcerpt } from '../lanes/take-excerpt'
import type { Pool, RunningJob } from './pool'

/** Ahead of a stretch stages before the first that changes settle first, then those behind it, seconds. */
const SETTLING_SECONDS = 2 * MOST_WARM_UP_SECONDS
/** Sound behind a stretch that stages look ahead into or delay, seconds. */
const RUN_OUT_SECONDS = 0.1

/** What is traced while a hand moves. */
export interface LanesWanted {
  readonly take: HashedTake
  /** The stages ahead of the first that changes. */
  readonly prefix: readonly StageDoc[]
  /** The rest. */
  readonly stages: readonly StageDoc[]
  /** Frames of the take. */
  readonly stretch: FrameRange
}

/**
 * Lanes that follow a hand: each worker traces its share of what is seen. Of requests the newest wins; an older one is
 * followed for no more than a piece by each.
 */
export class HandLanes {
  /** The excerpt that each worker was given last. */
  private readonly given: string[] = []
  private current: readonly RunningJob<'lanes'>[] = []

  constructor(private readonly pool: Pool) {}

  /** Traces a stretch once. Ends when all of it has come, or something newer is asked for. */
  async trace(wanted: LanesWanted, onTraces: (traces: readonly StretchTrace[]) => void): Promise<void> {
    const reducesGain = wanted.stages.some(({ on, kind }) => on && stageDefinitions[kind].reducesGain)
    this.leave()
    if (!reducesGain) return
    const { size } = this.pool
    const jobs = Array.from({ length: size }, (_, number) => this.ask(wanted, number, onTraces))
    this.current = jobs
    const answers = await Promise.all(jobs.map(({ result }) => result.catch(() => false)))
    for (const [number, hadExcerpt] of answers.entries()) if (!hadExcerpt) delete this.given[number]
  }

  /** Asks what is under way to end. */
  leave(): void {
    for (const job of this.current) job.endSoon()
    this.current = []
  }

  private ask(
    { take, prefix, stages, stretch }: LanesWanted,
    number: number,
    onTraces: (traces: readonly StretchTrace[]) => void,
  ): RunningJob<'lanes'> {
    const share = shareOf(stretch, frameCount(take.sound), number, this.pool.size)
    const excerptKey = `${take.hash} ${share.from} ${share.to}`
    const isGiven = this.given[number] === excerptKey
    this.given[number] = excerptKey
    const excerpt = isGiven
      ? null
      : takeExcerpt(excerptKey, take.sound, share, SETTLING_SECONDS, RUN_OUT_SECONDS)
    return this.pool.run(
      'lanes',
      { excerptKey, excerpt, prefix, stages },
      { priority: 'hand', take: null, worker: number, onPiece: onTraces },
    )
  }
}

/** One of `count` parts of a stretch, in whole hops, so that none is in two. */
function shareOf({ from, to }: FrameRange, frames: number, number: number, count: number): FrameRange {
  const end = Math.min(to, frames)
  const startOf = (k: number) => hopStart(from + ((end - from) * k) / count)
  return { from: Math.max(from, startOf(number)), to: number + 1 < count ? startOf(number + 1) : end }
}
