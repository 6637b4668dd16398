import { createStore, type StoreApi } from 'zustand/vanilla'

/** A sheet that lies over the page. */
export type SheetName = 'deliver' | 'keys' | 'terms' | 'trial'

export type Theme = 'system' | 'light' | 'dark'

/** What concerns the screen alone: nothing here changes what is heard or delivered. */
export interface ScreenState {
  readonly sheet: SheetName | null
  readonly theme: Theme
  /** Whether keys without a modifier do something; can be switched off (WCAG 2.2, 2.1.4). */
  readonly singleKeys: boolean
  /** Larger type and lines for a class, and only what is shown to it. */
  readonly projector: boolean
  readonly careNoteRead: boolean
  /** What a key just did to the chain, to be announced there; the same words twice are two objects. */
  readonly said: { readonly words: string } | null
}

/** The screen as it is at first. */
export function createScreenStore(): StoreApi<ScreenState> {
  return createStore<ScreenState>()(() => ({
    sheet: null,
    theme: 'system',
    singleKeys: true,
    projector: false,
    careNoteRead: false,
    said: null,
  }))
}
