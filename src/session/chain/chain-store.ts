import { createStore, type StoreApi } from 'zustand/vanilla'
import { type ChainDoc, type Snapshot, withSameParts } from '../../core'
import type { ChainEdit } from './chain-edits'
import { type ChainVersions, NO_SNAPSHOTS, snapshotKeys, type VersionsEdit } from './snapshots'

/** One change that can be undone, with what it was in words. */
export interface Change {
  readonly words: string
  readonly before: ChainVersions
  readonly after: ChainVersions
}

/** The part of the chain's state that the session document holds. */
export interface ChainContent extends ChainVersions {
  /** The selected stage; null only while the chain is empty. */
  readonly selectedId: string | null
}

export interface ChainState extends ChainContent {
  readonly past: readonly Change[]
  readonly future: readonly Change[]
  /** How many gestures have ended: with each the hand rests. */
  readonly gesturesEnded: number
  /** What can be had again without this page: as it came, or the chain as it last went into a file. */
  readonly safe: ChainVersions
  /**
   * Carries out an edit. Edits that follow one another with the same `gesture` (a drag, a held key) become one
   * change, until `endGesture`. What leaves everything unchanged is no change, also where a gesture comes back to
   * where it began.
   */
  edit(edit: ChainEdit, gesture?: string): void
  /** The same for an edit of the stored versions. */
  editVersions(edit: VersionsEdit, gesture?: string): void
  endGesture(): void
  undo(): void
  redo(): void
  select(stageId: string): void
  /** Takes over what a session document holds. It can be had again from there, and changes made before are gone. */
  open(content: ChainContent): void
  /** A chain has gone into a file. */
  setSafe(chain: ChainDoc): void
}

/** More would cost memory and be of no use to anyone. */
const MOST_CHANGES = 500

/** A gesture going on, and what it began from: all of it comes back where the gesture does. */
interface OpenGesture extends Pick<ChainState, 'past' | 'future'> {
  readonly name: string
  readonly versions: ChainVersions
}

/**
 * The chain with its stored versions, and every change that led to them.
 * @param selectedId the stage whose settings are shown at first
 */
export function createChainStore(
  initial: ChainDoc,
  selectedId: string | null = initial.stages[0]?.id ?? null,
): StoreApi<ChainState> {
  let openGesture: OpenGesture | null = null
  const first: ChainVersions = { chain: initial, snapshots: NO_SNAPSHOTS }
  return createStore<ChainState>()((set, get) => ({
    ...first,
    selectedId,
    past: [],
    future: [],
    gesturesEnded: 0,
    safe: first,
    edit(edit, gesture) {
      get().editVersions(({ chain, snapshots }) => {
        const edited = edit(chain)
        return edited && { ...edited, snapshots }
      }, gesture)
    },
    editVersions(edit, gesture) {
      const { past, future } = get()
      const begun = gesture === openGesture?.name ? openGesture : null
      // From where the gesture began, so that the words span all of it.
      const start = begun ?? { versions: versionsOf(get()), past, future }
      const edited = edit(start.versions)
      if (!edited) return
      const { words, snapshots } = edited
      const after = { chain: withSameParts(edited.chain, get().chain), snapshots }
      if (sameVersions(after, start.versions)) {
        openGesture = null
        if (begun) set({ ...placed(start.versions, get()), past: start.past, future: start.future })
        return
      }
      openGesture = gesture === undefined ? null : { ...start, name: gesture }
      const changes = [...start.past, { words, before: start.versions, after }].slice(-MOST_CHANGES)
      set({ ...placed(after, get()), past: changes, future: [] })
    },
    endGesture() {
      if (openGesture) set(({ gesturesEnded }) => ({ gesturesEnded: gesturesEnded + 1 }))
      openGesture = null
    },
    undo() {
      const { past, future } = get()
      const change = past.at(-1)
      if (!change) return
      openGesture = null
      set({ ...placed(change.before, get()), past: past.slice(0, -1), future: [change, ...future] })
    },
    redo() {
      const { past, future } = get()
      const [change] = future
      if (!change) return
      openGesture = null
      set({ ...placed(change.after, get()), past: [...past, change], future: future.slice(1) })
    },
    select(selectedId) {
      set({ selectedId })
    },
    open(content) {
      openGesture = null
      set({ ...content, past: [], future: [], safe: versionsOf(content) })
    },
    setSafe(chain) {
      set(({ safe }) => ({ safe: { ...safe, chain } }))
    },
  }))
}

/** Whether work on the chain or a stored version would be lost with the page. */
export function wouldBeLost({ safe, ...now }: ChainVersions & Pick<ChainState, 'safe'>): boolean {
  return !sameVersions(now, safe)
}

/** Whether two chains are alike in every setting, of stages that are off, too. */
export function sameChain(a: ChainDoc | null, b: ChainDoc | null): boolean {
  return a === b || JSON.stringify(a) === JSON.stringify(b)
}

function sameVersions(a: ChainVersions, b: ChainVersions): boolean {
  return (
    sameChain(a.chain, b.chain) &&
    snapshotKeys.every((key) => sameSnapshot(a.snapshots[key], b.snapshots[key]))
  )
}

function sameSnapshot(a: Snapshot | null, b: Snapshot | null): boolean {
  return a === b || (a !== null && b !== null && a.name === b.name && sameChain(a.chain, b.chain))
}

function versionsOf({ chain, snapshots }: ChainVersions): ChainVersions {
  return { chain, snapshots }
}

/** Other versions with a stage selected: one that was just added, else the same as before, else its neighbour. */
function placed(after: ChainVersions, { chain: before, selectedId }: ChainContent): ChainContent {
  const { chain, snapshots } = after
  const known = new Set(before.stages.map(({ id }) => id))
  const added = chain.stages.find(({ id }) => !known.has(id))
  if (added && chain.stages.length > before.stages.length) return { chain, snapshots, selectedId: added.id }
  if (chain.stages.some(({ id }) => id === selectedId)) return { chain, snapshots, selectedId }
  const index = before.stages.findIndex(({ id }) => id === selectedId)
  const neighbour = chain.stages[Math.min(Math.max(0, index), chain.stages.length - 1)]
  return { chain, snapshots, selectedId: neighbour?.id ?? null }
}
