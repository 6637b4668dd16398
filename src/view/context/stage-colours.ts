import { createStore, type StoreApi } from 'zustand/vanilla'
import type { ChainDoc } from '../../core'

/** How many colours there are; further stages share them. */
export const COLOURS = 5

/** Which colour each stage has, from 0, by stage id; stages that are gone keep theirs, to come back with it. */
export type StageColours = ReadonlyMap<string, number>

/**
 * The colours once `stages` are in the chain: those that have one keep it wherever they are, new ones get the one
 * that the fewest others have.
 */
export function withColours(known: StageColours, stages: readonly { readonly id: string }[]): StageColours {
  const fresh = stages.filter(({ id }) => !known.has(id))
  if (fresh.length === 0) return known
  const colours = new Map(known)
  for (const { id } of fresh) {
    const uses = Array.from({ length: COLOURS }, () => 0)
    for (const stage of stages) {
      const colour = colours.get(stage.id)
      if (colour !== undefined) uses[colour] = (uses[colour] ?? 0) + 1
    }
    colours.set(id, uses.indexOf(Math.min(...uses)))
  }
  return colours
}

/** Colours of all stages that are added to the chain, from now on. */
export function followStageColours(
  chain: StoreApi<{ readonly chain: ChainDoc }>,
): StoreApi<{ readonly colours: StageColours }> {
  const store = createStore(() => ({ colours: withColours(new Map(), chain.getState().chain.stages) }))
  chain.subscribe(({ chain: { stages } }) =>
    store.setState({ colours: withColours(store.getState().colours, stages) }),
  )
  return store
}

/** A colour as styles take it. */
export function colourOf(colours: StageColours, stageId: string): string {
  return `var(--stage-${(colours.get(stageId) ?? 0) + 1})`
}
