import type { ChainDoc, Scope, Snapshot } from '../../core'
import { sameChain } from '../chain/chain-store'
import { type SnapshotKey, snapshotLetters, snapshotWords } from '../chain/snapshots'

/** What the two sides of a comparison are called, everywhere. Names of versions are set apart from what surrounds them. */
export interface SideWords {
  readonly bypassed: string
  readonly processed: string
}

/** What the current chain is called beside a stored version. */
const NOW = 'now'

/** The two sides by name: without and with, or two versions of the chain. No two are called alike. */
export function sideWords(scope: Scope): SideWords {
  if (scope.kind !== 'snapshots') return { bypassed: 'without', processed: 'with' }
  const { a, b } = scope
  const alike = shownAs('a', a) === shownAs('b', b)
  return { bypassed: versionWords('a', a, alike), processed: versionWords('b', b, alike) }
}

function shownAs(key: SnapshotKey, snapshot: Snapshot | null): string {
  return snapshot ? snapshot.name || snapshotLetters[key] : NOW
}

/** @param alike whether the other version is called the same: then the letter tells them apart */
function versionWords(key: SnapshotKey, snapshot: Snapshot | null, alike: boolean): string {
  if (!snapshot) return NOW
  const letter = alike && snapshot.name ? `${snapshotLetters[key]} ` : ''
  return `${letter}${snapshotWords(key, snapshot)}`
}

/**
 * The name of the version whose stages the lanes and figures tell of, where that is not the current chain: they go with
 * the side "with", which is B while that is compared. Null where both are the same.
 */
export function otherChainWords(scope: Scope, chain: ChainDoc): string | null {
  if (scope.kind !== 'snapshots' || !scope.b || sameChain(scope.b.chain, chain)) return null
  return sideWords(scope).processed
}

/** The same as a sentence. */
export function stagesOfWords(scope: Scope, chain: ChainDoc): string | null {
  const words = otherChainWords(scope, chain)
  return words && `Lanes and figures of stages are those of ${words}, not of the current chain.`
}
