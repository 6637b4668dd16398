import { createContext, type ReactNode, useContext, useState } from 'react'
import { useStore } from 'zustand'
import type { Bench } from '../session/bench'
import type { ChainState } from '../session/chain-store'
import type { DeliveryState } from '../session/delivery-store'
import type { EvidenceState } from '../session/evidence-store'
import type { ListenState } from '../session/listen-store'
import type { TakeState } from '../session/take-store'
import { colourOf, followStageColours } from './stage/stage-colours'

const BenchContext = createContext<Bench | null>(null)
const ColoursContext = createContext<ReturnType<typeof followStageColours> | null>(null)

/** Gives the bench to everything inside. */
export function BenchProvider({ bench, children }: { bench: Bench; children: ReactNode }) {
  const [colours] = useState(() => followStageColours(bench.chain))
  return (
    <BenchContext value={bench}>
      <ColoursContext value={colours}>{children}</ColoursContext>
    </BenchContext>
  )
}

/** The bench this component stands on. Throws outside a BenchProvider. */
export function useBench(): Bench {
  const bench = useContext(BenchContext)
  if (!bench) throw new Error('useBench outside a BenchProvider')
  return bench
}

/** Part of a store's state. Selectors return primitives or things stored there, never fresh objects. */
export function useChain<Part>(select: (state: ChainState) => Part): Part {
  return useStore(useBench().chain, select)
}
export function useTake<Part>(select: (state: TakeState) => Part): Part {
  return useStore(useBench().take, select)
}
export function useListen<Part>(select: (state: ListenState) => Part): Part {
  return useStore(useBench().listen, select)
}
export function useEvidence<Part>(select: (state: EvidenceState) => Part): Part {
  return useStore(useBench().evidence, select)
}
export function useDelivery<Part>(select: (state: DeliveryState) => Part): Part {
  return useStore(useBench().delivery, select)
}

/** The colour of a stage, as styles take it: its own wherever it stands. */
export function useStageColour(stageId: string): string {
  const colours = useContext(ColoursContext)
  if (!colours) throw new Error('useStageColour outside a BenchProvider')
  return useStore(colours, (state) => colourOf(state.colours, stageId))
}
