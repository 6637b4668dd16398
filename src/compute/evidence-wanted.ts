import type { Comparison, FrameRange } from '../core'
import type { StretchTrace } from './lanes/live-traces'

/** What is compared, and what of it is wanted first. */
export interface EvidenceWanted {
  readonly comparison: Comparison
  readonly loop: FrameRange | null
  /** The stretch whose gain traces come ahead of everything else; null for none. */
  readonly live: FrameRange | null
}

/** Told what comes ahead of evidence. */
export interface EvidenceListener {
  onProgress(share: number): void
  /** Traces of stages on the processed side, provisional. They may belong to the request before. */
  onLiveTraces(traces: readonly StretchTrace[]): void
  /** All of them have come. */
  onTracesOver(): void
}
