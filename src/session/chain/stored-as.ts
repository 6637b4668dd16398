import type { ChainDoc } from '../../core'
import { sameChain } from './chain-store'
import { type SnapshotKey, type Snapshots, snapshotKeys, snapshotLetters } from './snapshots'

/** The stored version that a chain is. */
export interface StoredAs {
  readonly key: SnapshotKey
  /** Its name, or its letter where it has none; as it is, not set apart. */
  readonly shown: string
}

/** Which stored version `chain` is; one with a name where both are. Null where it is neither. */
export function storedAs(chain: ChainDoc, snapshots: Snapshots): StoredAs | null {
  const alike = snapshotKeys.filter((key) => sameChain(snapshots[key]?.chain ?? null, chain))
  const key = alike.find((each) => snapshots[each]?.name) ?? alike[0]
  return key ? { key, shown: snapshots[key]?.name || snapshotLetters[key] } : null
}
