import { createStore, type StoreApi } from 'zustand/vanilla'
import type { FrameRange } from '../../core'
import type { TakeState } from './take-store'

/** How the take is looked at. */
export interface ViewState {
  /** The range of the take that is seen, whose ends may lie between frames; null for all of it. */
  readonly seen: FrameRange | null
  /** Whether the spectrogram's lane is open. */
  readonly spectrogram: boolean
}

/** All of the take is seen, and again once there is another take; the lanes that are open stay so. */
export function createViewStore(take: StoreApi<TakeState>): StoreApi<ViewState> {
  const view = createStore<ViewState>()(() => ({ seen: null, spectrogram: false }))
  take.subscribe((now, before) => {
    if (now.take?.sound !== before.take?.sound) view.setState({ seen: null })
  })
  return view
}
