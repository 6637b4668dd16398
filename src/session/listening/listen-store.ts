import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Heard, SideName } from '../../audio/engine/messages'
import type { BandSweep, FrameRange, Scope } from '../../core'

/** How the take is listened to. Levels in dB, positions in frames of the take. */
export interface ListenState {
  readonly playing: boolean
  readonly positionFrame: number
  readonly heard: Heard
  /** The side to go back to after listening to what was removed. */
  readonly side: SideName
  readonly scope: Scope
  /** Hear the sound up to behind this stage; null: to the end of the chain. */
  readonly listeningPoint: string | null
  readonly matched: boolean
  /** The band that is held up and moved about just now; the chain knows nothing of it. */
  readonly sweep: BandSweep | null
  readonly monitorDb: number
  readonly loop: FrameRange | null
  readonly backingOn: boolean
  readonly backingLevelDb: number
  readonly backingOffsetMs: number
  /** Gain of each stage now, in the chain's order, dB. */
  readonly stageGainsDb: readonly number[]
  /** Output peak of late, dBFS. */
  readonly outputPeakDb: number
  /** Loudness of the output over the last 400 ms, LUFS. */
  readonly momentaryLufs: number
}

/** The first sound is quiet: about a third of full loudness. */
export const FIRST_MONITOR_DB = -18

/** Nothing plays; the whole chain is compared, matched, and heard with it. */
export function createListenStore(): StoreApi<ListenState> {
  return createStore<ListenState>()(() => ({
    playing: false,
    positionFrame: 0,
    heard: 'processed',
    side: 'processed',
    scope: { kind: 'chain' },
    listeningPoint: null,
    matched: true,
    sweep: null,
    monitorDb: FIRST_MONITOR_DB,
    loop: null,
    backingOn: false,
    backingLevelDb: 0,
    backingOffsetMs: 0,
    stageGainsDb: [],
    outputPeakDb: Number.NEGATIVE_INFINITY,
    momentaryLufs: Number.NEGATIVE_INFINITY,
  }))
}
