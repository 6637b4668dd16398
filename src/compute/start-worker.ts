import { ComputeError } from './compute-error'
import workerUrl from './worker/compute.worker.ts?worker&url'

/** Starts a worker of the pool. @throws ComputeError `no-workers` */
export function startWorker(): Worker {
  if (typeof Worker === 'undefined')
    throw new ComputeError(
      'no-workers',
      'this browser runs no workers, which measuring and rendering need. Use a current browser.',
    )
  return new Worker(workerUrl, { type: 'module' })
}
