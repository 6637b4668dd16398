import { createContext, type ReactNode, useContext, useState } from 'react'
import { useStore } from 'zustand'
import type { App } from '../../session/app'
import type { ChainState } from '../../session/chain/chain-store'
import type { DeliveryState } from '../../session/delivery-store'
import type { DetailState } from '../../session/detail-store'
import type { EvidenceState } from '../../session/evidence-store'
import type { ListenState } from '../../session/listening/listen-store'
import type { TakeState } from '../../session/take/take-store'
import type { ViewState } from '../../session/take/view-store'
import { colourOf, followStageColours } from './stage-colours'

/** All that is known about a comparison. */
export type Evidence = NonNullable<EvidenceState['evidence']>

/** The gain each side is given so that both are equally loud, dB. */
export type MatchingGains = Evidence['matching']

const AppContext = createContext<App | null>(null)
const ColoursContext = createContext<ReturnType<typeof followStageColours> | null>(null)

/** Provides the app to everything inside. */
export function AppProvider({ app, children }: { app: App; children: ReactNode }) {
  const [colours] = useState(() => followStageColours(app.chain))
  return (
    <AppContext value={app}>
      <ColoursContext value={colours}>{children}</ColoursContext>
    </AppContext>
  )
}

/** The app. Throws outside an AppProvider. */
export function useApp(): App {
  const app = useContext(AppContext)
  if (!app) throw new Error('useApp outside an AppProvider')
  return app
}

/** Part of a store's state. Selectors return primitives or things stored there, never fresh objects. */
export function useChain<Part>(select: (state: ChainState) => Part): Part {
  return useStore(useApp().chain, select)
}
export function useTake<Part>(select: (state: TakeState) => Part): Part {
  return useStore(useApp().take, select)
}
export function useListen<Part>(select: (state: ListenState) => Part): Part {
  return useStore(useApp().listen, select)
}
export function useEvidence<Part>(select: (state: EvidenceState) => Part): Part {
  return useStore(useApp().evidence, select)
}
export function useDetail<Part>(select: (state: DetailState) => Part): Part {
  return useStore(useApp().detail, select)
}
export function useDelivery<Part>(select: (state: DeliveryState) => Part): Part {
  return useStore(useApp().delivery, select)
}

export function useView<Part>(select: (state: ViewState) => Part): Part {
  return useStore(useApp().view, select)
}

/** The colour of a stage, as styles take it: the same wherever it is in the chain. */
export function useStageColour(stageId: string): string {
  const colours = useContext(ColoursContext)
  if (!colours) throw new Error('useStageColour outside an AppProvider')
  return useStore(colours, (state) => colourOf(state.colours, stageId))
}
