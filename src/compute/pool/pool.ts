import type { HashedTake } from '../address'
import { ComputeError } from '../compute-error'
import type { JobInput, JobName, JobPiece, JobResult } from '../jobs'
import type { FromWorker, JobRequest, Priority } from '../messages'
import { PoolWorker } from './pool-worker'

/** How often workers are looked at, ms; those with nothing to do only at every so many looks. */
const LOOK_MS = 200
const LOOKS_AT_IDLE = 5

/** More workers would trace lanes before the next frame of the screen can show them. */
const FEWEST_WORKERS = 2
const MOST_WORKERS = 4

/**
 * A longer take is held, and worked on, by one worker only: a little over four minutes of mono at 48 kHz, bytes. With two
 * at it memory is above five times the take.
 */
const SHARED_TAKE_BYTES = 48 * 2 ** 20

/** So many times a job is begun anew because its worker died; after that the job is at fault. */
const MOST_RESTARTS = 3
/** So many times the script is asked for again before those who wait are told. */
const MOST_LOADS = 3

export interface RunOptions<Name extends JobName> {
  readonly priority: Priority
  /** Null for jobs that need no take. */
  readonly take: HashedTake | null
  /** Gives the job up; `run` then returns null. */
  readonly signal?: AbortSignal
  /** For jobs that are shared out: the number of the worker that is to do it. */
  readonly worker?: number
  onProgress?(share: number): void
  onPiece?(piece: JobPiece<Name>): void
}

/** A job under way, as the page knows it. */
export interface RunningJob<Name extends JobName> {
  /** Null where it was given up. Fails with a ComputeError. */
  readonly result: Promise<JobResult<Name> | null>
  /** Asks it to end at its next good place. */
  endSoon(): void
}

interface Running {
  readonly request: JobRequest
  readonly take: HashedTake | null
  worker: PoolWorker
  restarts: number
  failedLoads: number
  readonly onProgress: (share: number) => void
  readonly onPiece: (piece: unknown) => void
  readonly resolve: (result: unknown) => void
  readonly reject: (error: unknown) => void
}

/**
 * Equal workers that do jobs, started by the page (workers started by workers stall in one engine) when there is
 * something to do. Jobs go where their take already is. A worker that dies or stops answering is replaced, given the
 * take again, and its jobs are begun anew.
 */
export class Pool {
  /** How many workers there can be. */
  readonly size: number
  private readonly workers: (PoolWorker | undefined)[] = []
  private readonly running = new Map<number, Running>()
  private lastId = 0
  private looks = 0
  private timer: ReturnType<typeof setInterval> | undefined

  /** @param make starts a worker; throws where the browser has none */
  constructor(
    private readonly make: () => Worker,
    processors: number,
  ) {
    this.size = Math.min(MOST_WORKERS, Math.max(FEWEST_WORKERS, processors))
  }

  /** Whether work on a take may be shared out among workers, each of which then holds it. */
  sharesOut(take: HashedTake): boolean {
    return bytesOf(take) <= SHARED_TAKE_BYTES
  }

  /** Has a job done. */
  run<Name extends JobName>(
    kind: Name,
    input: JobInput<Name>,
    { priority, take, signal, worker, onProgress, onPiece }: RunOptions<Name>,
  ): RunningJob<Name> {
    const id = ++this.lastId
    const request: JobRequest = { type: 'job', id, kind, input, priority, take: take?.hash ?? null }
    const answer = new Promise<unknown>((resolve, reject) => {
      if (signal?.aborted) return resolve(null)
      const doer = this.workerFor(take, priority, worker)
      this.running.set(id, {
        request,
        take,
        worker: doer,
        restarts: 0,
        failedLoads: 0,
        onProgress: onProgress ?? ignore,
        // What comes from this job is of its kind.
        onPiece: (piece) => onPiece?.(piece as JobPiece<Name>),
        resolve,
        reject,
      })
      this.ask(id)
      signal?.addEventListener('abort', () => this.giveUp(id), { once: true })
      this.timer ??= setInterval(() => this.look(), LOOK_MS)
    })
    return {
      result: answer as Promise<JobResult<Name> | null>,
      endSoon: () => this.running.get(id)?.worker.cancel(id, true),
    }
  }

  /** Has every worker let go of the take it holds, and gives up all jobs that need one. */
  forgetTake(): void {
    for (const [id, { take }] of this.running) if (take) this.giveUp(id)
    for (const worker of this.workers) worker?.forgetTake()
  }

  /** Ends all workers; jobs under way are given up. */
  end(): void {
    clearInterval(this.timer)
    this.timer = undefined
    for (const id of this.running.keys()) this.giveUp(id)
    for (const worker of this.workers) worker?.end()
    this.workers.length = 0
  }

  private workerFor(take: HashedTake | null, priority: Priority, wanted: number | undefined): PoolWorker {
    if (wanted !== undefined) return this.workerAt(wanted % this.size)
    const holders = this.workers.filter((worker) => take && worker?.holds(take.hash))
    const isShared = !take || this.sharesOut(take)
    const numbers = Array.from({ length: this.size }, (_, number) => number)
    const possible =
      isShared || holders.length === 0
        ? numbers
        : numbers.filter((number) => holders.includes(this.workers[number]))
    const cost = (number: number) => {
      const worker = this.workers[number]
      // Rather than wait behind one job a new worker is started.
      if (!worker) return 0.75
      const ahead = worker.queueAhead(priority)
      // Others would wait: that is better than giving the take away once more, and worse than an idle worker.
      const isInterrupted = worker.requests.size > ahead
      return ahead + (isInterrupted ? 0.25 : 0) + (take && !worker.holds(take.hash) ? 0.5 : 0)
    }
    // What is least urgent goes to the last of those that are as free: what it keeps there stands in nobody's way.
    const order = priority === 'study' ? possible.toReversed() : possible
    const best = order.reduce((a, b) => (cost(b) < cost(a) ? b : a))
    return this.workerAt(best)
  }

  private workerAt(number: number): PoolWorker {
    const there = this.workers[number]
    if (there) return there
    const worker: PoolWorker = new PoolWorker(this.make, {
      onAnswer: (message) => this.receive(message),
      onGone: (loaded) => this.beginAnew(worker, loaded),
    })
    this.workers[number] = worker
    return worker
  }

  private look(): void {
    this.looks++
    for (const worker of this.workers)
      if (worker && (worker.requests.size > 0 || this.looks % LOOKS_AT_IDLE === 0)) worker.look()
  }

  private receive(message: FromWorker): void {
    if (message.type === 'ready' || message.type === 'pong') return
    const { id } = message
    const job = this.running.get(id)
    switch (message.type) {
      case 'progress':
        job?.onProgress(message.share)
        break
      case 'piece':
        job?.onPiece(message.piece)
        break
      case 'done':
        this.settle(id)?.resolve(message.result)
        break
      case 'cancelled':
        this.settle(id)?.resolve(null)
        break
      case 'failed':
        this.settle(id)?.reject(new ComputeError('failed', message.message))
    }
  }

  private giveUp(id: number): void {
    const job = this.settle(id)
    job?.worker.cancel(id, false)
    job?.resolve(null)
  }

  private settle(id: number): Running | undefined {
    const job = this.running.get(id)
    this.running.delete(id)
    job?.worker.requests.delete(id)
    return job
  }

  /** The jobs of a worker that is gone go to the one in its place. */
  private beginAnew(worker: PoolWorker, loaded: boolean): void {
    for (const [id, job] of [...this.running]) {
      if (job.worker !== worker) continue
      if (!loaded && ++job.failedLoads >= MOST_LOADS) {
        this.settle(id)?.reject(new ComputeError('not-loaded', NOT_LOADED))
      } else if (loaded && ++job.restarts > MOST_RESTARTS) {
        this.settle(id)?.reject(new ComputeError('stopped', STOPPED))
      } else {
        this.ask(id)
      }
    }
  }

  /** Asks the worker of a job to do it; the job fails where there can be no worker. */
  private ask(id: number): void {
    const job = this.running.get(id)
    if (!job) return
    try {
      job.worker.ask(job.request, job.take)
    } catch (error) {
      this.settle(id)
      job.reject(error)
    }
  }
}

const NOT_LOADED = 'a part of the page could not be loaded. Check the connection and try again.'
const STOPPED = 'the work stopped several times without an answer. Close other tabs, or try a shorter take.'

function bytesOf({ sound }: HashedTake): number {
  return sound.channels.reduce((sum, samples) => sum + samples.byteLength, 0)
}

function ignore(): void {}
