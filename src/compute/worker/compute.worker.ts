import type { ToWorker } from '../messages'
import { Runner } from './runner'

declare const self: DedicatedWorkerGlobalScope

const runner = new Runner(self)
self.onmessage = ({ data }: MessageEvent<ToWorker>) => runner.handle(data)
self.postMessage({ type: 'ready' })
