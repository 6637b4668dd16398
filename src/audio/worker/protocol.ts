import type { ChainDoc, Measures, Sound } from '../../core'
import type { Evidence } from '../evidence/evidence'
import type { FrameRange } from '../evidence/matching'

/** What the page asks of the worker. Every request is answered under its `id`. */
export type ToWorker =
  /** The take that all later requests are about; answered with its measures. */
  | { readonly type: 'take'; readonly id: number; readonly take: Sound }
  | {
      readonly type: 'evidence'
      readonly id: number
      readonly without: ChainDoc
      readonly with: ChainDoc
      readonly loop: FrameRange | null
    }
  | { readonly type: 'render'; readonly id: number; readonly chain: ChainDoc }
  | { readonly type: 'makeup'; readonly id: number; readonly chain: ChainDoc; readonly stageId: string }
  /** Gives up whatever is under way for request `id`. */
  | { readonly type: 'abandon'; readonly id: number }

/** What the worker answers. */
export type FromWorker =
  | { readonly type: 'progress'; readonly id: number; readonly share: number }
  | { readonly type: 'measured'; readonly id: number; readonly measures: Measures }
  | { readonly type: 'evidence'; readonly id: number; readonly evidence: Evidence }
  | { readonly type: 'rendered'; readonly id: number; readonly sound: Sound }
  | { readonly type: 'makeup'; readonly id: number; readonly makeupDb: number | null }
  | { readonly type: 'failed'; readonly id: number; readonly message: string }
