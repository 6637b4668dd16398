import { BenchService } from './bench-service'
import { TracerService } from './tracer-service'

declare const self: DedicatedWorkerGlobalScope

/** Tracers are workers of the worker's own. They run its script by another name: it is fetched only once. */
const TRACER = 'tracer'
/** With more of them lanes would be there before the next frame of the screen can show them. */
const MOST_TRACERS = 4

if (self.name === TRACER) {
  const service = new TracerService(self, reportError)
  self.onmessage = ({ data }) => service.handle(data)
} else {
  const count = Math.min(MOST_TRACERS, navigator.hardwareConcurrency)
  const createTracer = () => new Worker(self.location.href, { type: 'module', name: TRACER })
  const service = new BenchService(self, count, createTracer)
  self.onmessage = ({ data }) => service.handle(data)
}
