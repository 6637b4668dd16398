import type { ChainDoc, Measures, Sound, Trace } from '../../core'
import type { MatchingGains, SideEvidence, StageEvidence, StretchTrace } from '../evidence/evidence'
import type { FrameRange } from '../evidence/matching'
import type { Part } from './parts'
import type { TakePart } from './take-parts'

/** Evidence asked for: of what, and where it is wanted first. */
export interface EvidenceRequest {
  readonly bypassed: ChainDoc
  readonly processed: ChainDoc
  readonly loop: FrameRange | null
  /** The stretch whose gain traces come ahead of everything else; null for none. */
  readonly live: FrameRange | null
}

/** Evidence as it goes over: what has not changed since the last goes by its number. */
export interface PackedEvidence {
  /** Without, with. */
  readonly sides: readonly Part<SideEvidence>[]
  readonly stages: readonly PackedStage[]
  /** Of the stages that have one, in their order. */
  readonly traces: readonly Part<Trace>[]
  readonly matching: MatchingGains
}

export interface PackedStage extends Omit<StageEvidence, 'trace'> {
  readonly id: string
  readonly hasTrace: boolean
}

/** A worker that traces for this one, from the page that started it. */
export type AboutTracer =
  | { readonly type: 'tracer-started'; readonly tracer: number; readonly port: MessagePort }
  /** It failed, or never came up. */
  | { readonly type: 'tracer-lost'; readonly tracer: number }

/** What the page asks of the worker. Every request but `take-part` and `abandon` is answered under its `id`. */
export type ToWorker =
  | AboutTracer
  /** The take that all later requests are about: its parts follow. Answered with its measures. */
  | {
      readonly type: 'take'
      readonly id: number
      readonly frames: number
      readonly channelCount: number
      readonly sampleRate: number
    }
  /** In order; those of a take that another has taken the place of may be missing. */
  | { readonly type: 'take-part'; readonly id: number; readonly part: TakePart }
  /** Takes the place of every earlier request for evidence, which then may go unanswered. */
  | ({ readonly type: 'evidence'; readonly id: number } & EvidenceRequest)
  | { readonly type: 'render'; readonly id: number; readonly chain: ChainDoc }
  | { readonly type: 'makeup'; readonly id: number; readonly chain: ChainDoc; readonly stageId: string }
  /** Gives up whatever is under way for request `id`. */
  | { readonly type: 'abandon'; readonly id: number }

/** What the worker answers. */
export type FromWorker =
  | { readonly type: 'progress'; readonly id: number; readonly share: number }
  | { readonly type: 'measured'; readonly id: number; readonly measures: Measures }
  /** Ahead of evidence, piece by piece, of each stage one; they come even where a newer request has been made. */
  | { readonly type: 'live-traces'; readonly id: number; readonly traces: readonly StretchTrace[] }
  /** All that were wanted have come, or something newer was asked for. */
  | { readonly type: 'traces-over'; readonly id: number }
  | { readonly type: 'evidence'; readonly id: number; readonly evidence: PackedEvidence }
  | { readonly type: 'rendered'; readonly id: number; readonly sound: Sound }
  | { readonly type: 'makeup'; readonly id: number; readonly makeupDb: number | null }
  | { readonly type: 'failed'; readonly id: number; readonly message: string }
