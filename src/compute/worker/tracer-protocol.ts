import type { StageDoc } from '../../core'
import type { StretchTrace } from '../evidence/evidence'
import type { Ground } from './tracer'

/** Name by which a worker knows that it is to trace: both kinds run one script, so that it is fetched only once. */
export const TRACER = 'tracer'

/** The first message to a tracer, from the page that made it: where its requests come from. */
export interface FirstToTracer {
  readonly type: 'port'
  readonly port: MessagePort
}

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
