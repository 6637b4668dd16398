import type { ChainDoc, Snapshot } from '../../core'
import { isolated } from '../../files/file-name'

export const snapshotKeys = ['a', 'b'] as const
export type SnapshotKey = (typeof snapshotKeys)[number]

/** Stored versions of the chain; null where nothing is stored. */
export type Snapshots = Readonly<Record<SnapshotKey, Snapshot | null>>

export const NO_SNAPSHOTS: Snapshots = { a: null, b: null }

/** The letter of each place where a version can be stored. */
export const snapshotLetters: Readonly<Record<SnapshotKey, string>> = { a: 'A', b: 'B' }

/** The longest name of a version, in UTF-16 units. */
export const MAX_SNAPSHOT_NAME = 40

/** What a version is called in a sentence: its name, set apart for any direction of writing, or its letter. */
export function snapshotWords(key: SnapshotKey, snapshot: Snapshot | null): string {
  return snapshot?.name ? isolated(snapshot.name) : snapshotLetters[key]
}

/** The chain and its stored versions: everything that undo spans. */
export interface ChainVersions {
  readonly chain: ChainDoc
  readonly snapshots: Snapshots
}

/** A change of both, with its words as they follow "Undo: "; null where there is nothing to do. */
export type VersionsEdit = (now: ChainVersions) => (ChainVersions & { readonly words: string }) | null

/** Stores the chain as it is now. Where a version was stored already, its name stays. */
export function storeSnapshot(key: SnapshotKey): VersionsEdit {
  return ({ chain, snapshots }) => {
    const before = snapshots[key]
    return {
      chain,
      snapshots: { ...snapshots, [key]: { name: before?.name ?? '', chain } },
      words: before ? `replaced ${snapshotWords(key, before)}` : `stored as ${snapshotLetters[key]}`,
    }
  }
}

/** Puts a stored version in place of the chain. */
export function restoreSnapshot(key: SnapshotKey): VersionsEdit {
  return ({ snapshots }) => {
    const stored = snapshots[key]
    return stored && { chain: stored.chain, snapshots, words: `back to ${snapshotWords(key, stored)}` }
  }
}

/** Empties the place of a stored version. */
export function discardSnapshot(key: SnapshotKey): VersionsEdit {
  return ({ chain, snapshots }) =>
    snapshots[key] && {
      chain,
      snapshots: { ...snapshots, [key]: null },
      words: `discarded ${snapshotWords(key, snapshots[key])}`,
    }
}
