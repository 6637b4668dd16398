import type { FromWorker, ToWorker } from '../../src/compute/messages'
import { Runner } from '../../src/compute/worker/runner'

/** Messages are cloned, and come late. */
function later<Message>(tell: (message: Message) => void) {
  return (message: Message, transfer: Transferable[]) => {
    const data = structuredClone(message, { transfer })
    setTimeout(() => tell(data), 0)
  }
}

/** How long it takes to find that a script cannot be loaded, ms. */
const LOAD_MS = 50

/** What a worker's script does, in this thread. It can be killed, fall silent, or never load. */
export class WorkerHere extends EventTarget implements Worker {
  onmessage: Worker['onmessage'] = null
  onmessageerror: Worker['onmessageerror'] = null
  onerror: Worker['onerror'] = null
  /** All that it was asked, in order. */
  readonly asked: ToWorker[] = []
  /** All that the page has heard from it. */
  readonly come: FromWorker[] = []
  isAlive = true
  isSilent = false
  private readonly runner = new Runner({ postMessage: later<FromWorker>((data) => this.tell(data)) })

  /** @param loads whether its script can be loaded; else an error is all that comes of it */
  constructor(loads: boolean) {
    super()
    if (loads) setTimeout(() => this.tell({ type: 'ready' }), 0)
    else setTimeout(() => this.err(), LOAD_MS)
    this.isAlive = loads
  }

  private readonly arrive = later<ToWorker>((message) => {
    if (this.isAlive && !this.isSilent) this.runner.handle(message)
  })

  postMessage(message: ToWorker, options: Transferable[] | StructuredSerializeOptions = []): void {
    this.asked.push(message)
    this.arrive(message, Array.isArray(options) ? options : (options.transfer ?? []))
  }

  /** As the browser does when it needs the memory, and as the page does: nobody is told. */
  terminate(): void {
    this.isAlive = false
  }

  /** Something in it was not caught. */
  err(): void {
    this.onerror?.call(this, new ErrorEvent())
  }

  private tell(data: FromWorker): void {
    if (!this.isAlive || this.isSilent) return
    this.come.push(data)
    this.onmessage?.(new MessageEvent('message', { data }))
  }
}

/** Node has none. */
class ErrorEvent extends Event {
  readonly message = 'the script failed'
  readonly filename = ''
  readonly lineno = 0
  readonly colno = 0
  readonly error = null

  constructor() {
    super('error')
  }
}

/** Starts workers in this thread, and remembers them. */
export class WorkersHere {
  /** In the order in which they were started. */
  readonly started: WorkerHere[] = []
  /** Whether the script of those that are started now can be loaded. */
  loads = true

  readonly make = (): Worker => {
    const worker = new WorkerHere(this.loads)
    this.started.push(worker)
    return worker
  }

  get alive(): WorkerHere[] {
    return this.started.filter(({ isAlive }) => isAlive)
  }

  /** All that was asked of any of them. */
  get asked(): ToWorker[] {
    return this.started.flatMap(({ asked }) => asked)
  }

  /** Ends what they are doing. */
  end(): void {
    for (const worker of this.started) worker.terminate()
  }
}
