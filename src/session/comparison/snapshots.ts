import { createStore, type StoreApi } from 'zustand/vanilla'
import type { ChainDoc, Scope } from '../../core'
import { type ChainState, sameChain } from '../chain/chain-store'
import type { ListenState } from '../listening/listen-store'

export type KeptName = 'a' | 'b'

/** Chains that were kept to be compared later; null where nothing is kept under the name. */
export type KeptState = Readonly<Record<KeptName, ChainDoc | null>>

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly listen: StoreApi<ListenState>
  readonly kept: StoreApi<KeptState>
}

/** Nothing kept. */
export function createKeptStore(): StoreApi<KeptState> {
  return createStore<KeptState>()(() => ({ a: null, b: null }))
}

/** Keeps the chain as it is now under one of two names, and compares what is kept. */
export class KeptVersions {
  constructor(private readonly stores: Stores) {}

  /** Keeps the chain as it is now, in the place of what was kept before. A comparison of what is kept follows. */
  keep(name: KeptName): void {
    this.stores.kept.setState({ [name]: this.stores.chain.getState().chain })
    if (this.stores.listen.getState().scope.kind === 'snapshots') this.compare()
  }

  /** Compares kept A with kept B; the one that is missing is the chain as it is now. */
  compare(): void {
    const { a, b } = this.stores.kept.getState()
    if (a || b) this.stores.listen.setState({ scope: { kind: 'snapshots', a, b } })
  }

  /** Puts a kept chain on the bench again, as one change. */
  bringBack(name: KeptName): void {
    const chain = this.stores.kept.getState()[name]
    if (chain) this.stores.chain.getState().replace(chain, `back to ${keptWords[name]}`)
  }
}

/** What a kept version is called. */
export const keptWords: Readonly<Record<KeptName, string>> = { a: 'kept A', b: 'kept B' }

/**
 * What to say where lanes and figures of stages tell of another chain than the one on the bench: they go with the
 * side "with", which is kept B while that is compared. Null where both are the same.
 */
export function stagesOfWords(scope: Scope, chain: ChainDoc): string | null {
  if (scope.kind !== 'snapshots' || !scope.b || sameChain(scope.b, chain)) return null
  return `Lanes and figures of stages are those of ${keptWords.b}, not of the chain on the bench.`
}

/** What the two sides of a comparison are called. */
export function sideWords(scope: Scope): { readonly bypassed: string; readonly processed: string } {
  if (scope.kind !== 'snapshots') return { bypassed: 'without', processed: 'with' }
  return { bypassed: scope.a ? keptWords.a : 'now', processed: scope.b ? keptWords.b : 'now' }
}
