import type { Steps } from '../../core'
import { beginJob } from '../jobs'
import { type FromWorker, type JobRequest, PRIORITIES, type ToWorker } from '../messages'
import { nextTask, SLICE_MS } from '../port/next-task'
import { type Poster, postMoving, postOwned } from '../port/post-moving'
import { IncomingTake } from './incoming-take'
import { WorkerTools } from './job-tools'
import { WorkerMemory } from './worker-memory'

/** Distance between two reports of progress, ms. */
const PROGRESS_MS = 100

const NO_TAKE = { sampleRate: 1, channels: [] }

/** A job that was asked for and has not ended. */
interface Asked {
  readonly request: JobRequest
  steps: Steps<unknown> | null
  tools: WorkerTools<unknown> | null
  isWanted: boolean
  reported: number
}

/** Runs jobs, the most urgent first and a slice at a time, so that a more urgent one or an end is heard of soon. */
export class Runner {
  private readonly memory = new WorkerMemory()
  private incoming: IncomingTake | null = null
  private jobs: Asked[] = []
  private isWorking = false

  constructor(private readonly page: Poster<FromWorker>) {}

  /** Does, or begins, what it is asked. */
  handle(message: ToWorker): void {
    switch (message.type) {
      case 'take':
        this.memory.adopt(null)
        this.incoming = new IncomingTake(message)
        break
      case 'take-part': {
        if (this.incoming?.hash !== message.hash) break
        const take = this.incoming.add(message)
        if (!take) break
        this.incoming = null
        this.memory.adopt(take)
        void this.work()
        break
      }
      case 'forget':
        this.incoming = null
        this.memory.adopt(null)
        break
      case 'job':
        this.jobs.push({
          request: message,
          steps: null,
          tools: null,
          isWanted: true,
          reported: performance.now(),
        })
        this.jobs.sort((a, b) => rankOf(a) - rankOf(b) || a.request.id - b.request.id)
        void this.work()
        break
      case 'cancel':
        this.cancel(message.id, message.soon)
        break
      case 'ping':
        this.post({ type: 'pong' })
    }
  }

  private cancel(id: number, soon: boolean): void {
    const job = this.jobs.find(({ request }) => request.id === id)
    if (!job) return
    job.isWanted = false
    if (soon && job.steps) return
    this.end(job)
    this.post({ type: 'cancelled', id })
  }

  private async work(): Promise<void> {
    if (this.isWorking) return
    this.isWorking = true
    // Not at once: what was asked together is looked at together.
    for (;;) {
      await nextTask()
      const job = this.jobs.find(({ request }) => this.canRun(request))
      if (!job) break
      this.runSlice(job)
    }
    this.isWorking = false
  }

  private canRun({ take }: JobRequest): boolean {
    return take === null || this.memory.take?.hash === take
  }

  private runSlice(job: Asked): void {
    const { request } = job
    const { id } = request
    const sliceEnd = performance.now() + SLICE_MS
    try {
      job.steps ??= this.begin(request, job)
      // One step at least, however late it is: work goes on.
      do {
        const step = job.steps.next()
        if (step.done) {
          this.end(job)
          postMoving(this.page, { type: 'done', id, result: step.value })
          return
        }
        this.report(job, step.value)
      } while (performance.now() < sliceEnd)
    } catch (error) {
      this.end(job)
      this.post({ type: 'failed', id, message: error instanceof Error ? error.message : String(error) })
    }
  }

  private begin({ id, kind, input }: JobRequest, job: Asked): Steps<unknown> {
    const tools = new WorkerTools(this.memory, this.memory.take?.sound ?? NO_TAKE, {
      tell: (piece: unknown) => postOwned(this.page, { type: 'piece', id, piece }),
      isWanted: () => job.isWanted,
    })
    job.tools = tools
    return beginJob(kind, input, tools)
  }

  private report(job: Asked, share: number): void {
    const now = performance.now()
    if (now < job.reported + PROGRESS_MS) return
    job.reported = now
    this.post({ type: 'progress', id: job.request.id, share })
  }

  private end(job: Asked): void {
    this.jobs = this.jobs.filter((other) => other !== job)
    job.tools?.leaveMemory()
  }

  private post(message: FromWorker): void {
    this.page.postMessage(message, [])
  }
}

function rankOf({ request }: Asked): number {
  return PRIORITIES[request.priority]
}
