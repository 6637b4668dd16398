import { createStore, type StoreApi } from 'zustand/vanilla'
import type { WavFormat } from '../files/wav/wav-writer'

/** A file that was delivered, and what writing it in its format did to the samples. */
export interface DeliveredFile {
  readonly fileName: string
  readonly format: WavFormat
  readonly clippedSamples: number
  readonly isDithered: boolean
}

/** What there is to know of a file before it is saved. */
export interface FileLevels {
  readonly integratedLufs: number | null
  readonly truePeakDbtp: number | null
  /** Samples that do not fit the format and would clip; 0 for float. */
  readonly samplesOver: number
}

export interface DeliveryState {
  readonly format: WavFormat
  /** Of the file as it would be saved now; null while they are being worked out. */
  readonly levels: FileLevels | null
  /** Share done, 0 to 1; null when nothing is being delivered. */
  readonly working: number | null
  /** The file last delivered. */
  readonly delivered: DeliveredFile | null
  readonly problem: string | null
}

/** The delivered file. */
export function createDeliveryStore(): StoreApi<DeliveryState> {
  return createStore<DeliveryState>()(() => ({
    format: 'pcm24',
    levels: null,
    working: null,
    delivered: null,
    problem: null,
  }))
}
