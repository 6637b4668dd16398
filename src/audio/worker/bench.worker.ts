import { matchingMakeupDb, measureSteps, renderSteps, type Sound } from '../../core'
import { changedPart } from '../evidence/live-traces'
import { type EvidenceCache, workOutEvidence } from '../evidence/work-out'
import { LiveLanes } from './live-lanes'
import { NewestOnly } from './newest-only'
import { EvidencePacker } from './packed-evidence'
import { postMoving, postOwned } from './post-moving'
import type { EvidenceRequest, FromWorker, ToWorker } from './protocol'
import { inSlices } from './slices'
import { IncomingTake } from './take-parts'

/** The hand rests when nothing new has been asked for this long, ms: several moves of a mouse. */
const REST_MS = 60
/** Distance between two reports of progress, ms. */
const PROGRESS_MS = 100

/** What of a worker's scope is used here. */
declare const self: {
  onmessage: ((event: MessageEvent<ToWorker>) => void) | null
  postMessage(message: object, transfer?: Transferable[]): void
}

let take: Sound | null = null
let incoming: IncomingTake | null = null
/** What was asked while the take was coming in. */
const waiting: ToWorker[] = []
let cache: EvidenceCache | null = null
const packer = new EvidencePacker()
const lanes = new LiveLanes()
const abandoned = new Set<number>()

/**
 * First what is wanted while a control moves, piece by piece: what is newer goes on with the next one. The rest once
 * the hand rests.
 */
const evidenceWork = new NewestOnly<EvidenceRequest & { readonly id: number }>((request, turn) =>
  answer(request.id, async (source) => {
    const { id, live } = request
    if (live) {
      const part = changedPart(source, request.with, cache?.with.rendering)
      if (part) {
        const goOn = { isNewest: turn.isNewest, stands: () => take === source }
        await lanes.trace(part, live, goOn, (trace) => postMoving(self, { type: 'live-trace', id, trace }))
        if (!turn.isNewest()) return
      }
      await turn.rest(REST_MS)
    }
    if (!turn.isNewest()) return
    const worked = await inSlices(
      workOutEvidence(source, request, request.loop, cache),
      turn.isNewest,
      progressOf(id),
    )
    if (!worked) return
    cache = worked.cache
    postOwned(self, { type: 'evidence', id, evidence: packer.pack(worked.evidence) })
  }),
)

self.onmessage = ({ data }: MessageEvent<ToWorker>) => {
  const isTake = data.type === 'take' || data.type === 'take-part'
  if (incoming && !isTake) waiting.push(data)
  else handle(data)
}

function handle(data: ToWorker): void {
  const { id } = data
  switch (data.type) {
    case 'take':
      evidenceWork.drop()
      take = null
      cache = null
      incoming = new IncomingTake(id, data.frames, data.channelCount, data.sampleRate)
      break
    case 'take-part':
      if (incoming?.id !== id || !incoming.add(data.part)) break
      take = incoming.sound
      incoming = null
      void answer(id, async (source) => {
        const measures = await inSlices(
          measureSteps(source),
          () => take === source,
          () => undefined,
        )
        if (measures) post({ type: 'measured', id, measures })
      })
      for (const request of waiting.splice(0)) handle(request)
      break
    case 'abandon':
      abandoned.add(id)
      break
    case 'evidence':
      evidenceWork.ask(data)
      break
    case 'render':
      void answer(id, async (source) => {
        const steps = renderSteps(source, data.chain)
        const rendering = await inSlices(steps, () => !abandoned.has(id), progressOf(id))
        if (rendering) postMoving(self, { type: 'rendered', id, sound: rendering.sound })
      })
      break
    case 'makeup':
      void answer(id, async (source) => {
        post({ type: 'makeup', id, makeupDb: matchingMakeupDb(source, data.chain, data.stageId) })
      })
  }
}

async function answer(id: number, work: (source: Sound) => Promise<void>): Promise<void> {
  try {
    if (take) await work(take)
  } catch (error) {
    post({ type: 'failed', id, message: error instanceof Error ? error.message : String(error) })
  } finally {
    abandoned.delete(id)
  }
}

/** Reports the share done of request `id` every now and then. */
function progressOf(id: number): (share: number) => void {
  let reported = performance.now()
  return (share) => {
    if (performance.now() < reported + PROGRESS_MS) return
    reported = performance.now()
    post({ type: 'progress', id, share })
  }
}

function post(message: FromWorker): void {
  self.postMessage(message)
}
