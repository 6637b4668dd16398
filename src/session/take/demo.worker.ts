import { demoTake } from '../../demo'

declare const self: DedicatedWorkerGlobalScope

// Sung here, since it takes longer than a page may stand still.
const { title, vocal, backing } = demoTake()
self.postMessage({ title, vocal, backing })
