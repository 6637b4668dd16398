import { matchingMakeupDb, measureSteps, renderSteps, type Sound } from '../../core'
import { changedPart } from '../evidence/live-traces'
import { type EvidenceCache, workOutEvidence } from '../evidence/work-out'
import { NewestOnly, type Turn } from './newest-only'
import { EvidencePacker } from './packed-evidence'
import { type Poster, postMoving, postOwned } from './post-moving'
import type { AboutTracer, EvidenceRequest, FromWorker, ToWorker } from './protocol'
import { inSlices } from './slices'
import { IncomingTake } from './take-parts'
import { Tracers } from './tracers'

/** The hand rests when nothing new has been asked for this long, ms: several moves of a mouse. */
const REST_MS = 60
/** Distance between two reports of progress, ms. */
const PROGRESS_MS = 100

/** What is asked of this worker itself. */
type Request = Exclude<ToWorker, AboutTracer>
type NumberedRequest = EvidenceRequest & { readonly id: number }

/** What the worker does that holds the take, renders and measures. */
export class BenchService {
  private take: Sound | null = null
  private incoming: IncomingTake | null = null
  /** What was asked while the take was coming in. */
  private readonly waiting: Request[] = []
  private cache: EvidenceCache | null = null
  private readonly packer = new EvidencePacker()
  private readonly abandoned = new Set<number>()
  private readonly tracers: Tracers
  private readonly evidenceWork = new NewestOnly<NumberedRequest>((request, turn) =>
    this.answer(request.id, (source) => this.workOut(source, request, turn)),
  )

  constructor(private readonly page: Poster<FromWorker>) {
    this.tracers = new Tracers((come) => postMoving(page, come))
  }

  /** Does, or begins, what it is asked; what is about a take that is still coming in has to wait for it. */
  handle(message: ToWorker): void {
    if (message.type === 'tracer-started') this.tracers.add(message.tracer, message.port)
    else if (message.type === 'tracer-lost') this.tracers.giveUp(message.tracer)
    else if (this.incoming && !isOfTake(message)) this.waiting.push(message)
    else this.begin(message)
  }

  private begin(message: Request): void {
    const { id } = message
    switch (message.type) {
      case 'take':
        this.evidenceWork.drop()
        this.tracers.leave()
        this.take = null
        this.cache = null
        this.incoming = new IncomingTake(id, message.frames, message.channelCount, message.sampleRate)
        break
      case 'take-part':
        if (this.incoming?.id !== id || !this.incoming.add(message.part)) break
        this.take = this.incoming.sound
        this.incoming = null
        void this.answer(id, (source) => this.measure(source, id))
        for (const request of this.waiting.splice(0)) this.begin(request)
        break
      case 'abandon':
        this.abandoned.add(id)
        break
      case 'evidence':
        this.evidenceWork.ask(message)
        break
      case 'render':
        void this.answer(id, async (source) => {
          const steps = renderSteps(source, message.chain)
          const rendering = await inSlices(steps, () => !this.abandoned.has(id), this.progressOf(id))
          if (rendering) postMoving(this.page, { type: 'rendered', id, sound: rendering.sound })
        })
        break
      case 'makeup':
        void this.answer(id, async (source) => {
          const makeupDb = matchingMakeupDb(source, message.chain, message.stageId)
          this.post({ type: 'makeup', id, makeupDb })
        })
    }
  }

  private async measure(source: Sound, id: number): Promise<void> {
    const measures = await inSlices(
      measureSteps(source),
      () => this.take === source,
      () => undefined,
    )
    if (measures) this.post({ type: 'measured', id, measures })
  }

  /** First what is wanted while a control moves, which others work out; the rest once the hand rests. */
  private async workOut(source: Sound, request: NumberedRequest, turn: Turn): Promise<void> {
    const { id, live, loop } = request
    const part = live && changedPart(source, request.processed, this.cache?.processed.rendering)
    if (part) await turn.orNewer(this.tracers.trace(id, part, live))
    this.post({ type: 'traces-over', id })
    if (live) await turn.orNewer(pause(REST_MS))
    if (!turn.isNewest()) return
    const steps = workOutEvidence(source, request, loop, this.cache)
    const worked = await inSlices(steps, turn.isNewest, this.progressOf(id))
    if (!worked) return
    this.cache = worked.cache
    postOwned(this.page, { type: 'evidence', id, evidence: this.packer.pack(worked.evidence) })
  }

  private async answer(id: number, work: (source: Sound) => Promise<void>): Promise<void> {
    try {
      if (this.take) await work(this.take)
    } catch (error) {
      this.post({ type: 'failed', id, message: error instanceof Error ? error.message : String(error) })
    } finally {
      this.abandoned.delete(id)
    }
  }

  /** Reports the share done of request `id` every now and then. */
  private progressOf(id: number): (share: number) => void {
    let reported = performance.now()
    return (share) => {
      if (performance.now() < reported + PROGRESS_MS) return
      reported = performance.now()
      this.post({ type: 'progress', id, share })
    }
  }

  private post(message: FromWorker): void {
    this.page.postMessage(message, [])
  }
}

function isOfTake({ type }: Request): boolean {
  return type === 'take' || type === 'take-part'
}

function pause(ms: number): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve, ms))
}
