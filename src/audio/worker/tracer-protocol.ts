import type { StageDoc } from '../../core'
import type { StretchTrace } from '../evidence/evidence'
import type { Ground } from './tracer'

/** What a tracer is asked. */
export type ToTracer =
  /** What all later requests are about. */
  | { readonly type: 'ground'; readonly ground: Ground }
  /** Gives up what is under way, and the ground. */
  | { readonly type: 'leave' }
  /** Takes the place of every earlier request. Answered with the end of its round, whole or not. */
  | { readonly type: 'trace'; readonly id: number; readonly stages: readonly StageDoc[] }

/** What a tracer answers. */
export type FromTracer =
  | { readonly type: 'live-traces'; readonly id: number; readonly traces: readonly StretchTrace[] }
  | { readonly type: 'round-over'; readonly id: number }
