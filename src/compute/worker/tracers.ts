import { hopStart, type SoundWithLeads, stageDefinitions, takeFrames } from '../../core'
import { type ChangedPart, MOST_WARM_UP_SECONDS } from '../evidence/live-traces'
import type { FrameRange } from '../evidence/matching'
import { buffersIn } from './post-moving'
import { groundOf } from './tracer'
import type { FromTracer, ToTracer } from './tracer-protocol'

/** Sound behind a stretch that stages look ahead into or delay, seconds. */
const RUN_OUT_SECONDS = 0.1

/** How a tracer is asked: the port to a worker that traces. */
export interface TracerPort {
  onmessage: ((event: MessageEvent<FromTracer>) => void) | null
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
  readonly busy: Set<number>
  readonly resolve: () => void
}

/**
 * Workers that trace lanes side by side while a control moves, each its own share of what is seen. Of requests the
 * newest wins: an older one is followed for no more than a piece by each.
 */
export class Tracers {
  private readonly ports = new Map<number, TracerPort>()
  private given: Given | null = null
  private asked: Asked | null = null

  constructor(
    private readonly onTraces: (come: Extract<FromTracer, { readonly type: 'live-traces' }>) => void,
  ) {}

  /** From the next request on, tracer number `tracer` takes a share. */
  add(tracer: number, port: TracerPort): void {
    port.onmessage = ({ data }) => {
      if (data.type === 'live-traces') this.onTraces(data)
      else this.endRound(tracer, data.id)
    }
    this.ports.set(tracer, port)
    this.given = null
  }

  /**
   * Goes on without one that failed, or never came up: lanes are for pictures on the way, and what is wrong comes to
   * light when all is worked out.
   */
  giveUp(tracer: number): void {
    this.ports.delete(tracer)
    this.given = null
    if (this.asked) this.endRound(tracer, this.asked.id)
  }

  /** Traces `stretch` (frames of the take) once. Ends when all of it has come, or something newer is asked for. */
  async trace(id: number, { sound, stages }: ChangedPart, stretch: FrameRange): Promise<void> {
    this.endAsked()
    const reducesGain = stages.some(({ on, kind }) => on && stageDefinitions[kind].reducesGain)
    if (this.ports.size === 0 || !reducesGain) return
    this.give(sound, stretch)
    await new Promise<void>((resolve) => {
      this.asked = { id, busy: new Set(this.ports.keys()), resolve }
      this.ask({ type: 'trace', id, stages })
    })
  }

  /** Gives up what is under way, and the take it is about. */
  leave(): void {
    this.endAsked()
    this.given = null
    this.ask({ type: 'leave' })
  }

  private ask(message: ToTracer): void {
    for (const port of this.ports.values()) port.postMessage(message, [])
  }

  /** Gives each its share of the stretch, where that is another than before. */
  private give(sound: SoundWithLeads, { from, to }: FrameRange): void {
    const { given } = this
    const [samples] = sound.channels
    if (given?.samples === samples && given?.from === from && given.to === to) return
    this.given = { samples, from, to }
    const ports = [...this.ports.values()]
    const end = Math.min(to, takeFrames(sound))
    // Whole hops, so that none is in two shares.
    const startOf = (k: number) => hopStart(from + ((end - from) * k) / ports.length)
    for (const [k, port] of ports.entries()) {
      const share = { from: Math.max(from, startOf(k)), to: k + 1 < ports.length ? startOf(k + 1) : end }
      const ground = groundOf(sound, share, MOST_WARM_UP_SECONDS, RUN_OUT_SECONDS)
      port.postMessage({ type: 'ground', ground }, [...buffersIn(ground)])
    }
  }

  private endAsked(): void {
    this.asked?.resolve()
    this.asked = null
  }

  private endRound(tracer: number, id: number): void {
    const { asked } = this
    if (asked?.id !== id) return
    asked.busy.delete(tracer)
    if (asked.busy.size === 0) this.endAsked()
  }
}
