import type { StoreApi } from 'zustand/vanilla'
import type { ChainState } from '../chain/chain-store'
import type { ListenState } from '../listening/listen-store'
import type { Listening } from '../listening/listening'
import type { TakeState } from '../take/take-store'
import type { Takes } from '../take/takes'
import type { ViewState } from '../take/view-store'
import type { TrialState } from '../trials/trial-store'

/** The parts of the app that a session document is written from and opened into. */
export interface SessionParts {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly listen: StoreApi<ListenState>
  readonly trial: StoreApi<TrialState>
  readonly view: StoreApi<ViewState>
  readonly takes: Pick<Takes, 'restore'>
  readonly listening: Pick<Listening, 'restore'>
}
