import { type FirstToTracer, TRACER } from './tracer-protocol'

/** With more of them lanes would be there before the next frame of the screen can show them. */
const MOST_TRACERS = 4

/** Told of tracers as they are started. */
interface TracerListener {
  /** Tracer number `tracer` can be asked by this port. */
  onStart(tracer: number, port: MessagePort): void
  /** It failed, or never came up. */
  onLoss(tracer: number): void
}

/**
 * Starts the workers that trace lanes, as many as there are processors. The page starts them although another worker
 * asks them, since in Firefox a worker that starts workers can stall for good; what is asked and answered goes from
 * worker to worker all the same.
 * @returns the workers, to be held: one that nobody holds may be ended
 */
export function startTracers(workerUrl: string, { onStart, onLoss }: TracerListener): Worker[] {
  const count = Math.min(MOST_TRACERS, navigator.hardwareConcurrency)
  return Array.from({ length: count }, (_, tracer) => {
    const worker = new Worker(workerUrl, { type: 'module', name: TRACER })
    worker.onerror = () => onLoss(tracer)
    const { port1, port2 } = new MessageChannel()
    const first: FirstToTracer = { type: 'port', port: port1 }
    worker.postMessage(first, [port1])
    onStart(tracer, port2)
    return worker
  })
}
