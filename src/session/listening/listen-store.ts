import { createStore, type StoreApi } from 'zustand/vanilla'
import type { Heard, SideName } from '../../audio/engine/messages'
import type { BandSweep, FrameRange, Scope } from '../../core'

/** How the take is listened to, as far as the session document holds it. Levels in dB, positions in frames. */
export interface ListenContent {
  readonly heard: Heard
  /** The side to go back to after listening to the difference. */
  readonly side: SideName
  readonly scope: Scope
  /** Hear the sound up to behind this stage; null: to the end of the chain. */
  readonly listeningPoint: string | null
  readonly matched: boolean
  readonly monitorDb: number
  readonly loop: FrameRange | null
  /** The loop to come back to when looping is switched on again. */
  readonly lastLoop: FrameRange | null
  readonly backingOn: boolean
  readonly backingLevelDb: number
  readonly backingOffsetMs: number
}

/** What passes with the moment, and is in no document. */
export interface ListenPassing {
  readonly playing: boolean
  readonly positionFrame: number
  /** The band that is swept just now; the chain knows nothing of it. */
  readonly sweep: BandSweep | null
  /** Gain of each stage now, in the chain's order, dB. */
  readonly stageGainsDb: readonly number[]
  /** Recent output peak, dBFS. */
  readonly outputPeakDb: number
  /** Loudness of the output over the last 400 ms, LUFS. */
  readonly momentaryLufs: number
}

export interface ListenState extends ListenContent, ListenPassing {}

/** The first sound is quiet: about a third of full loudness. */
export const FIRST_MONITOR_DB = -18

/** The whole chain is compared, matched, and heard with it. */
export const FIRST_LISTENING: ListenContent = {
  heard: 'processed',
  side: 'processed',
  scope: { kind: 'chain' },
  listeningPoint: null,
  matched: true,
  monitorDb: FIRST_MONITOR_DB,
  loop: null,
  lastLoop: null,
  backingOn: false,
  backingLevelDb: 0,
  backingOffsetMs: 0,
}

/** Nothing plays. */
const SILENT: ListenPassing = {
  playing: false,
  positionFrame: 0,
  sweep: null,
  stageGainsDb: [],
  outputPeakDb: Number.NEGATIVE_INFINITY,
  momentaryLufs: Number.NEGATIVE_INFINITY,
}

export function createListenStore(): StoreApi<ListenState> {
  return createStore<ListenState>()(() => ({ ...FIRST_LISTENING, ...SILENT }))
}
