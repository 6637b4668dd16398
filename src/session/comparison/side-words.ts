import type { ChainDoc, Scope } from '../../core'
import { sameChain } from '../chain/chain-store'
import { snapshotWords } from '../chain/snapshots'

/** What the two sides of a comparison are called. */
export function sideWords(scope: Scope): { readonly bypassed: string; readonly processed: string } {
  if (scope.kind !== 'snapshots') return { bypassed: 'without', processed: 'with' }
  return {
    bypassed: scope.a ? snapshotWords.a : 'now',
    processed: scope.b ? snapshotWords.b : 'now',
  }
}

/**
 * What to say where lanes and figures of stages tell of another chain than the current one: they go with the side
 * "with", which is B while that is compared. Null where both are the same.
 */
export function stagesOfWords(scope: Scope, chain: ChainDoc): string | null {
  if (scope.kind !== 'snapshots' || !scope.b || sameChain(scope.b, chain)) return null
  return `Lanes and figures of stages are those of ${snapshotWords.b}, not of the current chain.`
}
