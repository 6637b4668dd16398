import { matchingMakeupDb, measure, renderSteps, type Sound } from '../../core'
import { type EvidenceCache, workOutEvidence } from '../evidence/work-out'
import type { FromWorker, ToWorker } from './protocol'

/** How long work goes on before the worker looks whether it has been told to stop, ms. */
const SLICE_MS = 12

declare const self: DedicatedWorkerGlobalScope

let take: Sound | null = null
let cache: EvidenceCache | null = null
const abandoned = new Set<number>()

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  switch (data.type) {
    case 'take':
      take = data.take
      cache = null
      void answer(data.id, async (source) => ({ type: 'measured', id: data.id, measures: measure(source) }))
      break
    case 'abandon':
      abandoned.add(data.id)
      break
    case 'evidence':
      void answer(data.id, async (source) => {
        const worked = await inSlices(data.id, workOutEvidence(source, data, data.loop, cache))
        if (!worked) return null
        cache = worked.cache
        return { type: 'evidence', id: data.id, evidence: worked.evidence }
      })
      break
    case 'render':
      void answer(data.id, async (source) => {
        const rendering = await inSlices(data.id, renderSteps(source, data.chain))
        return rendering && { type: 'rendered', id: data.id, sound: rendering.sound }
      })
      break
    case 'makeup':
      void answer(data.id, async (source) => {
        const makeupDb = matchingMakeupDb(source, data.chain, data.stageId)
        return { type: 'makeup', id: data.id, makeupDb }
      })
  }
}

async function answer(id: number, work: (source: Sound) => Promise<FromWorker | null>): Promise<void> {
  try {
    const message = take && (await work(take))
    if (message) self.postMessage(message)
  } catch (error) {
    const failed: FromWorker = {
      type: 'failed',
      id,
      message: error instanceof Error ? error.message : String(error),
    }
    self.postMessage(failed)
  } finally {
    abandoned.delete(id)
  }
}

/** Runs `steps` to the end, or to nothing once the request has been abandoned. */
async function inSlices<Result>(id: number, steps: Generator<number, Result, void>): Promise<Result | null> {
  let sliceEnd = performance.now() + SLICE_MS
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
    if (performance.now() < sliceEnd) continue
    const progress: FromWorker = { type: 'progress', id, share: step.value }
    self.postMessage(progress)
    await nextTask()
    if (abandoned.has(id)) return null
    sliceEnd = performance.now() + SLICE_MS
  }
}

/** Lets messages that have arrived be handled. A channel, because timers are held back when they nest. */
function nextTask(): Promise<void> {
  return new Promise((resolve) => {
    const { port1, port2 } = new MessageChannel()
    port1.onmessage = () => {
      port1.close()
      resolve()
    }
    port2.postMessage(null)
  })
}
