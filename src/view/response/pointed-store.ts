import { createStore, type StoreApi } from 'zustand/vanilla'

/** Where on the plot somebody points. */
export interface PointedState {
  /** Where the pointer is, Hz; null off the plot. */
  readonly pointerHz: number | null
  /** The handle under the pointer, and that with the focus, by their keys. */
  readonly hovered: string | null
  readonly focused: string | null
  /** Frequency of the handle with the focus, Hz. */
  readonly focusedHz: number | null
}

export type PointedStore = StoreApi<PointedState>

/** A store of its own: the pointer moves often, and the plot need not be drawn anew for that. */
export function createPointedStore(): PointedStore {
  return createStore<PointedState>()(() => ({
    pointerHz: null,
    hovered: null,
    focused: null,
    focusedHz: null,
  }))
}

/** The frequency to read at: that of the pointer, or else of the handle with the focus. */
export function pointedHz({ pointerHz, focusedHz }: PointedState): number | null {
  return pointerHz ?? focusedHz
}
