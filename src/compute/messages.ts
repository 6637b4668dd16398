import type { JobName } from './jobs'

/** What is done first, lowest first. */
export const PRIORITIES = { hand: 0, screen: 1, evidence: 2, study: 3 } as const
export type Priority = keyof typeof PRIORITIES

/** A job as it is asked of a worker. */
export interface JobRequest {
  readonly type: 'job'
  readonly id: number
  readonly kind: JobName
  readonly input: unknown
  readonly priority: Priority
  /** Hash of the take that it needs; null for none. */
  readonly take: string | null
}

/** What the page asks of a worker. */
export type ToWorker =
  /** The take that jobs are about, in place of any before; its parts follow in order. */
  | {
      readonly type: 'take'
      readonly hash: string
      readonly frames: number
      readonly channelCount: number
      readonly sampleRate: number
    }
  | {
      readonly type: 'take-part'
      readonly hash: string
      readonly fromFrame: number
      readonly channels: readonly Float32Array[]
    }
  /** Lets go of the take, and of all that was made from it. */
  | { readonly type: 'forget' }
  | JobRequest
  /** Gives the job up at once, or (`soon`) at its next good place. */
  | { readonly type: 'cancel'; readonly id: number; readonly soon: boolean }
  /** Answered at once: the worker lives. */
  | { readonly type: 'ping' }

/** What a worker answers. */
export type FromWorker =
  | { readonly type: 'ready' }
  | { readonly type: 'pong' }
  | { readonly type: 'progress'; readonly id: number; readonly share: number }
  | { readonly type: 'piece'; readonly id: number; readonly piece: unknown }
  | { readonly type: 'done'; readonly id: number; readonly result: unknown }
  | { readonly type: 'cancelled'; readonly id: number }
  | { readonly type: 'failed'; readonly id: number; readonly message: string }
