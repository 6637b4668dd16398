import { type ChainDoc, type Comparison, frameCount, type Measures, type Sound } from '../../core'
import type { Evidence, StretchTrace } from '../evidence/evidence'
import type { FrameRange } from '../evidence/matching'
import workerUrl from './bench.worker.ts?worker&url'
import { EvidenceUnpacker, type UnpackedEvidence } from './packed-evidence'
import { buffersIn } from './post-moving'
import type { FromWorker, ToWorker } from './protocol'
import { nextTask } from './slices'
import { startTracers } from './start-tracers'
import { takeParts } from './take-parts'

/** Work that the worker could not do. */
export class WorkerError extends Error {
  override readonly name = 'WorkerError'
}

type Answer =
  | Exclude<FromWorker, { readonly type: 'progress' | 'live-traces' | 'traces-over' | 'evidence' | 'failed' }>
  | { readonly type: 'evidence'; readonly evidence: UnpackedEvidence }

/** What is compared, and what of it is wanted first. */
export interface EvidenceWanted {
  readonly comparison: Comparison
  readonly loop: FrameRange | null
  /** The stretch whose gain traces come ahead of everything else; null for none. */
  readonly live: FrameRange | null
}

/** Told what comes ahead of evidence. */
export interface EvidenceListener {
  onProgress(share: number): void
  /** Traces of stages on the side `with`, provisional. They may belong to the request before. */
  onLiveTraces(traces: readonly StretchTrace[]): void
  /** All of them have come. */
  onTracesOver(): void
}

interface Pending {
  onProgress(share: number): void
  /** Null when the request was abandoned. */
  resolve(answer: Answer | null): void
  reject(error: WorkerError): void
}

/**
 * The page's side of the one worker that renders and measures, and of those that trace for it. It holds its own copy
 * of the take. Of requests for
 * evidence the newest wins: an older one still under way is abandoned and answers null.
 */
export class BenchWorker {
  private readonly worker = new Worker(workerUrl, { type: 'module' })
  private readonly pending = new Map<number, Pending>()
  private lastId = 0
  private evidenceId = 0
  private takeId = 0
  private hasAnswered = false
  /** Null until they are started. */
  private tracers: readonly Worker[] | null = null
  private isDead = false
  private listener: EvidenceListener | null = null
  private readonly unpacker = new EvidenceUnpacker()

  constructor() {
    this.worker.onmessage = ({ data }: MessageEvent<FromWorker>) => {
      this.hasAnswered = true
      this.receive(data)
    }
    this.worker.onerror = () => {
      for (const id of [...this.pending.keys()])
        this.fail(id, 'The worker that renders and measures has stopped.')
      // One that never came up never will: nobody would answer.
      if (!this.hasAnswered) this.isDead = true
    }
  }

  /**
   * Gives the worker the take that all later requests are about, part by part, and measures it. Null when another
   * take took its place.
   * @throws WorkerError when it could not be measured
   */
  async setTake(take: Sound): Promise<Measures | null> {
    this.supersede()
    this.settle(this.takeId, null)
    const { id, answer } = this.expect(() => undefined)
    this.takeId = id
    const { sampleRate, channels } = take
    this.send({ type: 'take', id, frames: frameCount(take), channelCount: channels.length, sampleRate })
    for (const part of takeParts(take)) {
      this.send({ type: 'take-part', id, part }, [...buffersIn(part)])
      await nextTask()
      if (!this.pending.has(id)) break
    }
    const result = await answer
    return result?.type === 'measured' ? result.measures : null
  }

  /**
   * Evidence of a comparison; null when a newer request took its place. What has not changed since the last is the
   * same object again.
   * @throws WorkerError when it could not be worked out
   */
  async evidence(
    { comparison, loop, live }: EvidenceWanted,
    listener: EvidenceListener,
  ): Promise<Evidence | null> {
    this.supersede()
    const { id, answer } = this.expect((share) => listener.onProgress(share))
    this.evidenceId = id
    this.listener = listener
    if (live) this.ensureTracers()
    this.send({ type: 'evidence', id, ...comparison, loop, live })
    const result = await answer
    return result?.type === 'evidence' ? { ...result.evidence, chains: comparison } : null
  }

  /**
   * The take run through `chain`, block by block; null when `signal` stopped it.
   * @throws WorkerError when it could not be rendered
   */
  async render(
    chain: ChainDoc,
    onProgress: (share: number) => void,
    signal: AbortSignal,
  ): Promise<Sound | null> {
    const { id, answer } = this.expect(onProgress)
    signal.addEventListener('abort', () => this.abandon(id), { once: true })
    this.send({ type: 'render', id, chain })
    const result = await answer
    return result?.type === 'rendered' ? result.sound : null
  }

  /**
   * Makeup gain with which a compressor is as loud as its input; null where that cannot be measured.
   * @throws WorkerError when the chain has no such compressor
   */
  async makeup(chain: ChainDoc, stageId: string): Promise<number | null> {
    const { id, answer } = this.expect(() => undefined)
    this.send({ type: 'makeup', id, chain, stageId })
    const result = await answer
    return result?.type === 'makeup' ? result.makeupDb : null
  }

  private expect(onProgress: (share: number) => void): { id: number; answer: Promise<Answer | null> } {
    const id = ++this.lastId
    const answer = new Promise<Answer | null>((resolve, reject) => {
      this.pending.set(id, { onProgress, resolve, reject })
    })
    // Whoever asked hears of it when they come to wait for it.
    answer.catch(() => undefined)
    if (this.isDead)
      this.fail(id, 'The worker that renders and measures could not be loaded. Reload the page.')
    return { id, answer }
  }

  private abandon(id: number): void {
    if (this.pending.has(id)) this.send({ type: 'abandon', id })
    this.settle(id, null)
  }

  /** The worker gives up older requests for evidence by itself. */
  private supersede(): void {
    this.settle(this.evidenceId, null)
  }

  private receive(message: FromWorker): void {
    switch (message.type) {
      case 'progress':
        this.pending.get(message.id)?.onProgress(message.share)
        break
      case 'live-traces':
        if (message.id > this.takeId) this.listener?.onLiveTraces(message.traces)
        break
      case 'traces-over':
        if (message.id === this.evidenceId) this.listener?.onTracesOver()
        break
      case 'evidence':
        // Unpacked even where nobody waits for it: the next one builds on it.
        this.settle(message.id, { type: 'evidence', evidence: this.unpacker.unpack(message.evidence) })
        this.ensureTracers()
        break
      case 'failed':
        this.fail(message.id, message.message)
        break
      default:
        this.settle(message.id, message)
    }
  }

  /** Starting them takes a while: done once the first figures are in, or when first they are needed. */
  private ensureTracers(): void {
    this.tracers ??= startTracers(workerUrl, {
      onStart: (tracer, port) => this.send({ type: 'tracer-started', tracer, port }, [port]),
      onLoss: (tracer) => this.send({ type: 'tracer-lost', tracer }),
    })
  }

  private settle(id: number, answer: Answer | null): void {
    const request = this.pending.get(id)
    this.pending.delete(id)
    request?.resolve(answer)
  }

  private fail(id: number, reason: string): void {
    const request = this.pending.get(id)
    this.pending.delete(id)
    request?.reject(new WorkerError(reason))
  }

  private send(message: ToWorker, transfer: Transferable[] = []): void {
    this.worker.postMessage(message, transfer)
  }
}
