import { createStore, type StoreApi } from 'zustand/vanilla'
import type { WavFormat } from '../files/wav/wav-writer'

/** A file that was delivered, and what writing it in its format did to the samples. */
export interface DeliveredFile {
  readonly fileName: string
  readonly format: WavFormat
  readonly clippedSamples: number
  readonly isDithered: boolean
}

export interface DeliveryState {
  readonly format: WavFormat
  /** Share done, 0 to 1; null when nothing is being delivered. */
  readonly working: number | null
  /** The file last delivered. */
  readonly delivered: DeliveredFile | null
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
