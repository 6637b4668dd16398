import { BenchService } from './bench-service'
import { type FirstToTracer, TRACER } from './tracer-protocol'
import { TracerService } from './tracer-service'

declare const self: DedicatedWorkerGlobalScope

if (self.name === TRACER) {
  self.onmessage = ({ data: { port } }: MessageEvent<FirstToTracer>) => {
    const service = new TracerService(port, reportError)
    port.onmessage = ({ data }) => service.handle(data)
  }
} else {
  const service = new BenchService(self)
  self.onmessage = ({ data }) => service.handle(data)
}
