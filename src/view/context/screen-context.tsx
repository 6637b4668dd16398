import { createContext, type ReactNode, useContext } from 'react'
import { useStore } from 'zustand'
import type { StoreApi } from 'zustand/vanilla'
import type { ScreenState } from './screen-store'

const ScreenContext = createContext<StoreApi<ScreenState> | null>(null)

/** Gives the screen's own state to everything inside. */
export function ScreenProvider({ screen, children }: { screen: StoreApi<ScreenState>; children: ReactNode }) {
  return <ScreenContext value={screen}>{children}</ScreenContext>
}

/** The store itself, for event handlers. Throws outside a ScreenProvider. */
export function useScreenStore(): StoreApi<ScreenState> {
  const screen = useContext(ScreenContext)
  if (!screen) throw new Error('useScreenStore outside a ScreenProvider')
  return screen
}

/** Part of the screen's state. */
export function useScreen<Part>(select: (state: ScreenState) => Part): Part {
  return useStore(useScreenStore(), select)
}
