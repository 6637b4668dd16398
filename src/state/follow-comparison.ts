import type { StoreApi } from 'zustand/vanilla'
import type { BenchWorker } from '../audio/worker/bench-worker'
import { comparisonOf } from '../core'
import type { ChainState } from './chain-store'
import type { EvidenceState } from './evidence-store'
import type { ListenState } from './listen-store'
import type { TakeState } from './take-store'

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly listen: StoreApi<ListenState>
  readonly evidence: StoreApi<EvidenceState>
}

/** Keeps the evidence up to date with the take, the chain, what is compared and the loop: newest wins. */
export function followComparison({ chain, take, listen, evidence }: Stores, worker: BenchWorker): void {
  let asked = 0

  const update = async () => {
    if (!take.getState().take?.measures) return
    const request = ++asked
    const { scope, earAfterId, loop } = listen.getState()
    evidence.setState({ working: 0 })
    try {
      const comparison = comparisonOf(chain.getState().chain, scope, earAfterId)
      const found = await worker.evidence(comparison, loop, (working) => {
        if (request === asked) evidence.setState({ working })
      })
      if (request === asked && found) evidence.setState({ evidence: found, working: null, problem: null })
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error)
      if (request === asked)
        evidence.setState({ working: null, problem: `The figures could not be worked out: ${reason}` })
    }
  }

  chain.subscribe((now, before) => {
    if (now.chain !== before.chain) void update()
  })
  take.subscribe((now, before) => {
    if (now.take?.sound !== before.take?.sound) evidence.setState({ evidence: null, working: 0 })
    if (now.take?.measures !== before.take?.measures) void update()
  })
  listen.subscribe((now, before) => {
    if (now.scope !== before.scope || now.earAfterId !== before.earAfterId || now.loop !== before.loop)
      void update()
  })
}
