import type { ChainDoc, Comparison, Measures, Sound } from '../../core'
import type { Evidence } from '../evidence/evidence'
import type { FrameRange } from '../evidence/matching'
import workerUrl from './bench.worker.ts?worker&url'
import type { FromWorker, ToWorker } from './protocol'

/** Work that the worker could not do. */
export class WorkerError extends Error {
  override readonly name = 'WorkerError'
}

type Answer = Exclude<FromWorker, { readonly type: 'progress' | 'failed' }>

interface Pending {
  onProgress(share: number): void
  /** Null when the request was abandoned. */
  resolve(answer: Answer | null): void
  reject(error: WorkerError): void
}

/**
 * The page's side of the one worker that renders and measures. It holds its own copy of the take. Of requests for
 * evidence the newest wins: an older one still under way is abandoned and answers null.
 */
export class BenchWorker {
  private readonly worker = new Worker(workerUrl, { type: 'module' })
  private readonly pending = new Map<number, Pending>()
  private lastId = 0
  private evidenceId = 0

  constructor() {
    this.worker.onmessage = ({ data }: MessageEvent<FromWorker>) => this.receive(data)
    this.worker.onerror = () => {
      for (const id of [...this.pending.keys()])
        this.fail(id, 'The worker that renders and measures has stopped.')
    }
  }

  /**
   * Gives the worker the take that all later requests are about, and measures it.
   * @throws WorkerError when it could not be measured
   */
  async setTake(take: Sound): Promise<Measures | null> {
    this.abandon(this.evidenceId)
    const { id, answer } = this.expect(() => undefined)
    this.send({ type: 'take', id, take })
    const result = await answer
    return result?.type === 'measured' ? result.measures : null
  }

  /**
   * Evidence of a comparison; null when a newer request took its place.
   * @throws WorkerError when it could not be worked out
   */
  async evidence(
    comparison: Comparison,
    loop: FrameRange | null,
    onProgress: (share: number) => void,
  ): Promise<Evidence | null> {
    this.abandon(this.evidenceId)
    const { id, answer } = this.expect(onProgress)
    this.evidenceId = id
    this.send({ type: 'evidence', id, ...comparison, loop })
    const result = await answer
    return result?.type === 'evidence' ? result.evidence : null
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
    return { id, answer }
  }

  private abandon(id: number): void {
    const request = this.pending.get(id)
    if (!request) return
    this.pending.delete(id)
    this.send({ type: 'abandon', id })
    request.resolve(null)
  }

  private receive(message: FromWorker): void {
    const request = this.pending.get(message.id)
    if (!request) return
    if (message.type === 'progress') {
      request.onProgress(message.share)
    } else if (message.type === 'failed') {
      this.fail(message.id, message.message)
    } else {
      this.pending.delete(message.id)
      request.resolve(message)
    }
  }

  private fail(id: number, reason: string): void {
    const request = this.pending.get(id)
    this.pending.delete(id)
    request?.reject(new WorkerError(reason))
  }

  private send(message: ToWorker): void {
    this.worker.postMessage(message)
  }
}
