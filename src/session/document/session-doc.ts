import type { SideName } from '../../audio/engine/messages'
import type { ChainDoc, FrameRange, Scope } from '../../core'
import type { Snapshots } from '../chain/snapshots'
import type { SoundRef } from '../take/sound-ref'
import type { TrialRecord } from '../trials/trial-record'

/** The version that this program writes. */
export const SESSION_VERSION = 1

/** The most blind trials in a document. The oldest are left out when there are more. */
export const MAX_TRIALS = 1000

/** What is compared. Stored versions are those of the document. */
export type ScopeDoc = Exclude<Scope, { kind: 'snapshots' }> | { readonly kind: 'snapshots' }

/** The backing with the settings it plays with. */
export interface BackingDoc extends SoundRef {
  readonly on: boolean
  readonly levelDb: number
  /** How much later the backing starts than the take. */
  readonly offsetMs: number
}

/** Everything that is in the app but the sounds themselves, to which it refers by hash. Plain data. */
export interface SessionDoc {
  readonly format: 'evenhand-session'
  readonly version: typeof SESSION_VERSION
  readonly take: SoundRef | null
  readonly backing: BackingDoc | null
  readonly chain: ChainDoc
  readonly snapshots: Snapshots
  readonly compared: {
    readonly scope: ScopeDoc
    /** Id of the last stage that is heard; null for the end of the chain. */
    readonly listeningPoint: string | null
  }
  readonly listening: {
    readonly side: SideName
    /** Hears the difference instead of the side. */
    readonly difference: boolean
    readonly matched: boolean
    /** Level of the monitor when the session opens: no louder than the first sound of all. */
    readonly monitorDb: number
    readonly loop: FrameRange | null
    /** The loop to come back to when looping is switched on again. */
    readonly lastLoop: FrameRange | null
  }
  /** Blind trials, the oldest first. */
  readonly trials: readonly TrialRecord[]
  readonly view: {
    readonly selectedStage: string | null
    /** The range of the take that is seen; null for all of it. */
    readonly seen: FrameRange | null
    /** Whether the spectrogram's lane is open. */
    readonly spectrogram: boolean
  }
}

/** A session as JSON text. Infinite ratios, which JSON cannot hold, are written "infinity", as in chain files. */
export function sessionToJson(session: SessionDoc): string {
  return JSON.stringify(session, (_, value: unknown) =>
    value === Number.POSITIVE_INFINITY ? 'infinity' : value,
  )
}
