import { createStore, type StoreApi } from 'zustand/vanilla'
import type { StageDetail } from '../compute/stage-detail'

export interface DetailState {
  /** The stage that `detail` is of; null before the first. */
  readonly stageId: string | null
  /** As it was last worked out; null while nothing is known. */
  readonly detail: StageDetail | null
}

/** What is known of the selected stage alone. */
export function createDetailStore(): StoreApi<DetailState> {
  return createStore<DetailState>()(() => ({ stageId: null, detail: null }))
}
