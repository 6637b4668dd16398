import { createStore, type StoreApi } from 'zustand/vanilla'
import type { WavFormat } from '../audio/files/wav-writer'

export interface DeliveryState {
  readonly format: WavFormat
  /** Share done, 0 to 1; null when nothing is being delivered. */
  readonly working: number | null
  /** The file last delivered. */
  readonly delivered: { readonly fileName: string; readonly clippedSamples: number } | null
  readonly problem: string | null
}

/** The file that leaves the bench. */
export function createDeliveryStore(): StoreApi<DeliveryState> {
  return createStore<DeliveryState>()(() => ({
    format: 'pcm24',
    working: null,
    delivered: null,
    problem: null,
  }))
}
