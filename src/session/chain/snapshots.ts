import type { ChainDoc } from '../../core'

export const snapshotNames = ['a', 'b'] as const
export type SnapshotName = (typeof snapshotNames)[number]

/** Stored versions of the chain; null where nothing is stored. */
export type Snapshots = Readonly<Record<SnapshotName, ChainDoc | null>>

export const NO_SNAPSHOTS: Snapshots = { a: null, b: null }

/** What a stored version is called. */
export const snapshotWords: Readonly<Record<SnapshotName, string>> = { a: 'A', b: 'B' }

/** The chain and its stored versions: everything that undo spans. */
export interface ChainVersions {
  readonly chain: ChainDoc
  readonly snapshots: Snapshots
}

/** A change of both, with its words as they follow "Undo: "; null where there is nothing to do. */
export type VersionsEdit = (now: ChainVersions) => (ChainVersions & { readonly words: string }) | null

/** Stores the chain as it is now, instead of what was stored under the name before. */
export function storeSnapshot(name: SnapshotName): VersionsEdit {
  return ({ chain, snapshots }) => ({
    chain,
    snapshots: { ...snapshots, [name]: chain },
    words: `${snapshots[name] ? 'replaced' : 'stored as'} ${snapshotWords[name]}`,
  })
}

/** Puts a stored version in place of the chain. */
export function restoreSnapshot(name: SnapshotName): VersionsEdit {
  return ({ snapshots }) => {
    const chain = snapshots[name]
    return chain && { chain, snapshots, words: `back to ${snapshotWords[name]}` }
  }
}

/** Empties the place of a stored version. */
export function discardSnapshot(name: SnapshotName): VersionsEdit {
  return ({ chain, snapshots }) =>
    snapshots[name] && {
      chain,
      snapshots: { ...snapshots, [name]: null },
      words: `discarded ${snapshotWords[name]}`,
    }
}
