import { createStore, type StoreApi } from 'zustand/vanilla'
import { type ChainDoc, withSameParts } from '../../core'
import type { ChainEdit } from './chain-edits'

/** One change that can be undone, with what it was in words. */
export interface Change {
  readonly words: string
  readonly before: ChainDoc
  readonly after: ChainDoc
}

export interface ChainState {
  readonly chain: ChainDoc
  /** The stage at hand; null only while the chain is empty. */
  readonly selectedId: string | null
  readonly past: readonly Change[]
  readonly future: readonly Change[]
  /** The chain that can be had again without the bench: as it came, or as it last went into a file. */
  readonly safe: ChainDoc
  /**
   * Carries out an edit. Edits that follow one another with the same `gesture` (a drag, a held key) become one
   * change, until `endGesture`. What leaves the chain as it was is no change, also where a gesture comes back to
   * where it began.
   */
  edit(edit: ChainEdit, gesture?: string): void
  endGesture(): void
  undo(): void
  redo(): void
  select(stageId: string): void
  /** Puts another chain in place, as one change. */
  replace(chain: ChainDoc, words: string): void
  /** A chain has gone into a file. */
  setSafe(chain: ChainDoc): void
}

/** More would cost memory and be of no use to anyone. */
const MOST_CHANGES = 500

/** A gesture going on, and what it began from: all of it comes back where the gesture does. */
interface OpenGesture extends Pick<ChainState, 'chain' | 'past' | 'future'> {
  readonly name: string
}

/** The chain at hand and every change that led to it. */
export function createChainStore(initial: ChainDoc): StoreApi<ChainState> {
  let openGesture: OpenGesture | null = null
  return createStore<ChainState>()((set, get) => ({
    chain: initial,
    selectedId: initial.stages[0]?.id ?? null,
    past: [],
    future: [],
    safe: initial,
    edit(edit, gesture) {
      const { chain, past, future, selectedId } = get()
      const begun = gesture === openGesture?.name ? openGesture : null
      // From where the gesture began, so that the words span all of it.
      const start = begun ?? { chain, past, future }
      const edited = edit(start.chain)
      if (!edited) return
      const result = { ...edited, chain: withSameParts(edited.chain, chain) }
      if (sameChain(result.chain, start.chain)) {
        openGesture = null
        if (begun) set({ ...placed(start.chain, selectedId, chain), past: start.past, future: start.future })
        return
      }
      openGesture = gesture === undefined ? null : { ...start, name: gesture }
      const change = { words: result.words, before: start.chain, after: result.chain }
      const changes = [...start.past, change].slice(-MOST_CHANGES)
      set({ ...placed(result.chain, selectedId, chain), past: changes, future: [] })
    },
    endGesture() {
      openGesture = null
    },
    undo() {
      const { past, future, selectedId, chain } = get()
      const change = past.at(-1)
      if (!change) return
      openGesture = null
      set({
        ...placed(change.before, selectedId, chain),
        past: past.slice(0, -1),
        future: [change, ...future],
      })
    },
    redo() {
      const { past, future, selectedId, chain } = get()
      const [change] = future
      if (!change) return
      openGesture = null
      set({ ...placed(change.after, selectedId, chain), past: [...past, change], future: future.slice(1) })
    },
    select(selectedId) {
      set({ selectedId })
    },
    replace(chain, words) {
      get().edit(() => ({ chain, words }))
    },
    setSafe(safe) {
      set({ safe })
    },
  }))
}

/** Whether work on the chain would be lost with the page. */
export function wouldBeLost({ chain, safe }: Pick<ChainState, 'chain' | 'safe'>): boolean {
  return !sameChain(chain, safe)
}

/** Whether two chains are alike in every setting, of stages that are off, too. */
export function sameChain(a: ChainDoc, b: ChainDoc): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}

/** A new chain with a stage at hand: a stage that was just added, else the same as before, else its neighbour. */
function placed(
  chain: ChainDoc,
  selectedId: string | null,
  before: ChainDoc,
): Pick<ChainState, 'chain' | 'selectedId'> {
  const known = new Set(before.stages.map(({ id }) => id))
  const added = chain.stages.find(({ id }) => !known.has(id))
  if (added && chain.stages.length > before.stages.length) return { chain, selectedId: added.id }
  if (chain.stages.some(({ id }) => id === selectedId)) return { chain, selectedId }
  const index = before.stages.findIndex(({ id }) => id === selectedId)
  const neighbour = chain.stages[Math.min(Math.max(0, index), chain.stages.length - 1)]
  return { chain, selectedId: neighbour?.id ?? null }
}
