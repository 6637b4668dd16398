import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Evidence, LoopEvidence } from '../compute/evidence'
import type { LiveTrace } from './live-trace'

export interface EvidenceState {
  /** Of the comparison as it was last worked out; null before the first. */
  readonly evidence: Evidence | null
  /** Share done of what is being worked out now, 0 to 1; null when it is up to date. */
  readonly working: number | null
  /** Gain traces newer than the evidence, by stage id, while a control moves. */
  readonly liveTraces: ReadonlyMap<string, LiveTrace>
  /** Over the loop, where one is set, as it was last worked out; null while nothing is known of that loop. */
  readonly loop: LoopEvidence | null
  /** Whether facts over the loop are being worked out, or will be once the evidence is there. */
  readonly isLoopWorking: boolean
  /** Why the evidence could not be worked out, in words made to be shown. */
  readonly problem: string | null
}

/** What is known about both sides of the comparison. */
export function createEvidenceStore(): StoreApi<EvidenceState> {
  return createStore<EvidenceState>()(() => ({
    evidence: null,
    working: null,
    liveTraces: new Map(),
    loop: null,
    isLoopWorking: false,
    problem: null,
  }))
}
