import type { StoreApi } from 'zustand/vanilla'
import { scopeAfter } from '../../core'
import type { ChainState } from '../chain/chain-store'
import type { ListenState } from '../listening/listen-store'

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly listen: StoreApi<ListenState>
}

/** Keeps comparing the same band while others come and go, and its stage once it is gone itself. */
export function followBands({ chain, listen }: Stores): void {
  chain.subscribe((now, before) => {
    if (now.chain === before.chain) return
    const { scope } = listen.getState()
    const next = scopeAfter(scope, before.chain, now.chain)
    if (next !== scope) listen.setState({ scope: next })
  })
}
