import { frameCount } from '../../core'
import type { HashedTake } from '../address'
import { type FromWorker, type JobRequest, PRIORITIES, type Priority, type ToWorker } from '../messages'
import { nextTask } from '../port/next-task'
import { buffersIn } from '../port/post-moving'
import { takeParts } from './take-parts'

/** A worker is silent while this many looks at it in a row find no answer; more after it was replaced for that. */
const SILENT_LOOKS = 5
const MOST_SILENT_LOOKS = 40
/** A worker that has not come up yet is given longer: its script may have to be fetched. */
const COMING_UP_LOOKS = 75

/** Told of a worker's answers, and of its end. */
interface PoolWorkerListener {
  onAnswer(message: FromWorker): void
  /** It is gone, with all that it was asked. `loaded`: whether its script ever ran. */
  onGone(loaded: boolean): void
}

/** The page's side of one worker: gives it the take, asks it, and notices when it has died. */
export class PoolWorker {
  /** Jobs it was asked for and has not answered. */
  readonly requests = new Map<number, JobRequest>()
  /** Null until there is something to ask. */
  private worker: Worker | null = null
  /** The take that it has or is being given: another object each time it is given. */
  private held: { readonly hash: string } | null = null
  private hasLoaded = false
  private unanswered = 0
  private patience = SILENT_LOOKS

  constructor(
    private readonly make: () => Worker,
    private readonly listener: PoolWorkerListener,
  ) {}

  /** Whether it has, or is being given, this take. */
  holds(hash: string): boolean {
    return this.held?.hash === hash
  }

  /** How many jobs it has that are done before one of this priority: what is less urgent waits for it. */
  queueAhead(priority: Priority): number {
    let count = 0
    for (const request of this.requests.values())
      if (PRIORITIES[request.priority] <= PRIORITIES[priority]) count++
    return count
  }

  /**
   * @param take what the job is about; given to the worker where it does not hold it
   * @throws ComputeError `no-workers`
   */
  ask(request: JobRequest, take: HashedTake | null): void {
    this.worker ??= this.start()
    this.requests.set(request.id, request)
    if (take && !this.holds(take.hash)) void this.give(take)
    this.send(request)
  }

  cancel(id: number, soon: boolean): void {
    this.send({ type: 'cancel', id, soon })
  }

  forgetTake(): void {
    if (!this.held) return
    this.held = null
    this.send({ type: 'forget' })
  }

  /** To be called every now and then: asks whether it still lives, and gives it up once it has not answered for long. */
  look(): void {
    if (!this.worker) return
    const most = this.hasLoaded ? this.patience : COMING_UP_LOOKS
    if (this.unanswered >= most) {
      this.patience = Math.min(MOST_SILENT_LOOKS, this.patience * 2)
      this.lose()
      return
    }
    this.unanswered++
    this.send({ type: 'ping' })
  }

  end(): void {
    if (this.worker) {
      this.worker.onmessage = null
      this.worker.onerror = null
      this.worker.terminate()
    }
    this.worker = null
    this.held = null
    this.unanswered = 0
    this.hasLoaded = false
  }

  /** What is asked next goes to a new worker, which knows nothing yet. */
  private lose(): void {
    const loaded = this.hasLoaded
    this.end()
    this.listener.onGone(loaded)
  }

  private start(): Worker {
    const worker = this.make()
    worker.onmessage = ({ data }: MessageEvent<FromWorker>) => this.receive(data)
    worker.onerror = () => this.lose()
    return worker
  }

  private receive(message: FromWorker): void {
    this.hasLoaded = true
    this.unanswered = 0
    if (message.type === 'done' || message.type === 'failed') this.patience = SILENT_LOOKS
    this.listener.onAnswer(message)
  }

  private async give(take: HashedTake): Promise<void> {
    const { hash, sound } = take
    const given = { hash }
    this.held = given
    const { sampleRate, channels } = sound
    this.send({
      type: 'take',
      hash,
      frames: frameCount(sound),
      channelCount: channels.length,
      sampleRate,
    })
    for (const part of takeParts(take)) {
      this.send(part, [...buffersIn(part)])
      await nextTask()
      if (this.held !== given) return
    }
  }

  private send(message: ToWorker, transfer: Transferable[] = []): void {
    this.worker?.postMessage(message, transfer)
  }
}
