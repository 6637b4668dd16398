import type { StoreApi } from 'zustand/vanilla'
import type { Scope } from '../../core'
import type { ChainState } from '../chain/chain-store'
import type { ListenState } from '../listening/listen-store'
import { bandScope, scopeAfter, snapshotScope, stageScope } from './scope-after'

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly listen: StoreApi<ListenState>
}

/** Decides what is compared: it follows the selected stage, bands that move, and the stored versions. */
export class Comparing {
  constructor(private readonly stores: Stores) {
    const { chain, listen } = stores
    chain.subscribe((now, before) => {
      const { scope } = listen.getState()
      const next = scopeAfter(scope, before, now)
      if (next !== scope) listen.setState({ scope: next })
    })
  }

  /** Compares the whole chain, the selected stage, its first band that is on, or the stored versions. */
  compare(what: Scope['kind']): void {
    const { chain, selectedId, snapshots } = this.stores.chain.getState()
    const scopes: Readonly<Record<Scope['kind'], () => Scope>> = {
      chain: () => ({ kind: 'chain' }),
      stage: () => stageScope(selectedId),
      band: () => bandScope(chain, selectedId),
      snapshots: () => snapshotScope(snapshots),
    }
    this.stores.listen.setState({ scope: scopes[what]() })
  }

  /** Compares the whole chain instead of a part of it, or the selected stage instead of the whole. */
  switchScope(): void {
    this.compare(this.stores.listen.getState().scope.kind === 'chain' ? 'stage' : 'chain')
  }

  /** Compares a band of an equaliser; its stage where it is compared already. */
  switchBand(stageId: string, bandIndex: number): void {
    const { scope } = this.stores.listen.getState()
    const isCompared = scope.kind === 'band' && scope.stageId === stageId && scope.bandIndex === bandIndex
    this.stores.listen.setState({
      scope: isCompared ? stageScope(stageId) : { kind: 'band', stageId, bandIndex },
    })
  }
}
