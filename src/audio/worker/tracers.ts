import { frameCount, hopStart, type Sound, stageDefinitions } from '../../core'
import { type ChangedPart, MOST_WARM_UP_SECONDS } from '../evidence/live-traces'
import type { FrameRange } from '../evidence/matching'
import { buffersIn } from './post-moving'
import { groundOf } from './tracer'
import type { FromTracer, ToTracer } from './tracer-protocol'

/** Sound behind a stretch that stages look ahead into or delay, seconds. */
const RUN_OUT_SECONDS = 0.1

/** What of a worker is used here. */
export interface TracerWorker {
  onmessage: ((event: MessageEvent<FromTracer>) => void) | null
  onerror: ((event: ErrorEvent) => void) | null
  postMessage(message: ToTracer, transfer: Transferable[]): void
}

/** What the tracers have been given to work on. */
interface Given {
  readonly samples: Float32Array | undefined
  readonly from: number
  readonly to: number
}

/** A request under way, and whose round of it is not over. */
interface Asked {
  readonly id: number
  readonly busy: Set<TracerWorker>
  readonly resolve: () => void
}

/**
 * Workers that trace lanes side by side while a control moves, each its own share of what is seen. Of requests the
 * newest wins: an older one is followed for no more than a piece by each.
 */
export class Tracers {
  private workers: readonly TracerWorker[] | null = null
  private given: Given | null = null
  private asked: Asked | null = null

  constructor(
    private readonly count: number,
    private readonly create: () => TracerWorker,
    private readonly onTraces: (come: Extract<FromTracer, { readonly type: 'live-traces' }>) => void,
  ) {}

  /** Has them come up, which takes a while, where they are not up yet. */
  standBy(): readonly TracerWorker[] {
    this.workers ??= Array.from({ length: this.count }, () => {
      const worker = this.create()
      worker.onmessage = ({ data }) => {
        if (data.type === 'live-traces') this.onTraces(data)
        else this.endRound(worker, data.id)
      }
      worker.onerror = () => this.giveUp(worker)
      return worker
    })
    return this.workers
  }

  /** Traces `stretch` (frames of the take) once. Ends when all of it has come, or something newer is asked for. */
  async trace(id: number, { sound, stages }: ChangedPart, stretch: FrameRange): Promise<void> {
    this.endAsked()
    const workers = this.standBy()
    if (workers.length === 0 || !stages.some(({ on, kind }) => on && stageDefinitions[kind].reducesGain))
      return
    this.give(workers, sound, stretch)
    await new Promise<void>((resolve) => {
      this.asked = { id, busy: new Set(workers), resolve }
      for (const worker of workers) worker.postMessage({ type: 'trace', id, stages }, [])
    })
  }

  /** Gives up what is under way, and the take it is about. */
  leave(): void {
    this.endAsked()
    this.given = null
    for (const worker of this.workers ?? []) worker.postMessage({ type: 'leave' }, [])
  }

  /** Gives each its share of the stretch, where that is another than before. */
  private give(workers: readonly TracerWorker[], sound: Sound, { from, to }: FrameRange): void {
    const { given } = this
    const [samples] = sound.channels
    if (given?.samples === samples && given?.from === from && given.to === to) return
    this.given = { samples, from, to }
    const end = Math.min(to, frameCount(sound))
    // Whole hops, so that none is in two shares.
    const startOf = (k: number) => hopStart(from + ((end - from) * k) / workers.length)
    for (const [k, worker] of workers.entries()) {
      const share = { from: Math.max(from, startOf(k)), to: k + 1 < workers.length ? startOf(k + 1) : end }
      const ground = groundOf(sound, share, MOST_WARM_UP_SECONDS, RUN_OUT_SECONDS)
      worker.postMessage({ type: 'ground', ground }, [...buffersIn(ground)])
    }
  }

  private endAsked(): void {
    this.asked?.resolve()
    this.asked = null
  }

  private endRound(worker: TracerWorker, id: number): void {
    const { asked } = this
    if (asked?.id !== id) return
    asked.busy.delete(worker)
    if (asked.busy.size === 0) this.endAsked()
  }

  /**
   * Goes on without one that failed, or never came up: lanes are for pictures on the way, and what is wrong comes to
   * light when all is worked out.
   */
  private giveUp(worker: TracerWorker): void {
    this.workers = (this.workers ?? []).filter((other) => other !== worker)
    this.given = null
    if (this.asked) this.endRound(worker, this.asked.id)
  }
}
