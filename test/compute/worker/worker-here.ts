import { BenchService } from '../../../src/compute/worker/bench-service'
import type { FromWorker, ToWorker } from '../../../src/compute/worker/protocol'
import type { FirstToTracer } from '../../../src/compute/worker/tracer-protocol'
import { TracerService } from '../../../src/compute/worker/tracer-service'

/** Every worker made since {@link endWorkers}. */
export const workers: WorkerHere[] = []
/** Everything that has come from them since then. */
export const come: FromWorker[] = []
let onCome: (message: FromWorker) => void = () => undefined
/** The ends of channels that are in use here. */
const ports: MessagePort[] = []

/** Tells `then` of each message from a worker, before anything else happens. */
export function whenCome(then: (message: FromWorker) => void): void {
  onCome = then
}

/** Ends all channels, and forgets what there was: a channel that stays open keeps a test from ending. */
export function endWorkers(): void {
  for (const port of ports.splice(0)) port.close()
  workers.length = 0
  come.length = 0
  onCome = () => undefined
}

/** A channel between threads: messages are cloned, and come late. */
const later =
  <Message>(tell: (message: Message) => void) =>
  (message: Message, transfer: Transferable[]) => {
    const data = structuredClone(message, { transfer: transfer as ArrayBuffer[] })
    setTimeout(() => tell(data), 0)
  }

/** Does what a worker's script does, in this thread. */
export class WorkerHere {
  onmessage: (event: { data: FromWorker }) => void = () => undefined
  onerror: () => void = () => undefined
  private readonly service = new BenchService({
    postMessage: later<FromWorker>((data) => {
      come.push(data)
      onCome(data)
      this.onmessage({ data })
    }),
  })

  constructor(
    readonly url: string,
    readonly options: WorkerOptions,
  ) {
    workers.push(this)
  }

  readonly postMessage = later<ToWorker | FirstToTracer>((message) => {
    if (message.type === 'tracer-started' || message.type === 'port') ports.push(message.port)
    if (message.type !== 'port') {
      this.service.handle(message)
      return
    }
    const { port } = message
    const service = new TracerService(port, (error) => {
      throw error
    })
    port.onmessage = ({ data }) => service.handle(data)
  })
}
