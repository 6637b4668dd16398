import type { StoreApi } from 'zustand/vanilla'
import { Player } from '../audio/player/player'
import { Compute } from '../compute/compute'
import { stageDefinitions } from '../core'
import { startingChain } from '../demo'
import { setSetting } from './chain/chain-edits'
import { type ChainState, createChainStore } from './chain/chain-store'
import { Comparing } from './comparison/comparing'
import { Delivery } from './delivery'
import { createDeliveryStore, type DeliveryState } from './delivery-store'
import { createEvidenceStore, type EvidenceState } from './evidence-store'
import { followComparison } from './follow-comparison'
import { createListenStore, type ListenState } from './listening/listen-store'
import { Listening } from './listening/listening'
import { createTakeStore, type TakeState } from './take/take-store'
import { Takes } from './take/takes'
import { createViewStore, type ViewState } from './take/view-store'
import { randomBit } from './trials/trial-chance'
import { createTrialStore, type TrialState } from './trials/trial-store'
import { Trials } from './trials/trials'

/** The application's root object: the state (stores) and the actions that change it. */
export interface App {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly listen: StoreApi<ListenState>
  readonly evidence: StoreApi<EvidenceState>
  readonly delivery: StoreApi<DeliveryState>
  readonly trial: StoreApi<TrialState>
  readonly view: StoreApi<ViewState>
  /** Loads takes and backings. */
  readonly takes: Takes
  /** Plays, loops and switches sides. */
  readonly listening: Listening
  /** Decides what is compared. */
  readonly comparing: Comparing
  /** Makes the delivered file. */
  readonly deliveries: Delivery
  /** Runs blind trials of what is compared. */
  readonly trials: Trials
  /** Works the evidence out again, after that failed. */
  askAgain(): void
  dismissEvidenceProblem(): void
  /**
   * Sets a stage's makeup gain so that it is as loud as its input, as one change. False where there is too little
   * sound to tell.
   */
  matchMakeup(stageId: string): Promise<boolean>
}

/** An app with the demo's chain and no take yet. */
export function createApp(): App {
  const chain = createChainStore(startingChain())
  const take = createTakeStore()
  const listen = createListenStore()
  const evidence = createEvidenceStore()
  const delivery = createDeliveryStore()
  const trial = createTrialStore()
  const view = createViewStore(take)
  const compute = new Compute()
  const player = new Player({
    onReport: (report) => listening.receive(report),
    onError: (error) => listening.fail(error),
  })
  const listening = new Listening({ chain, take, listen, evidence }, player)
  const comparing = new Comparing({ chain, listen })
  const takes = new Takes(take, compute, (name) => listening.loaded(name))
  view.subscribe(({ seen }) => evidence.setState({ seen }))
  const askAgain = followComparison({ chain, take, listen, evidence }, compute)
  return {
    chain,
    take,
    listen,
    evidence,
    delivery,
    trial,
    view,
    takes,
    listening,
    comparing,
    deliveries: new Delivery({ chain, take, delivery }, compute),
    trials: new Trials({ chain, take, listen, evidence, trial }, listening, {
      randomBit,
      now: () => new Date(),
    }),
    askAgain,
    dismissEvidenceProblem: () => evidence.setState({ problem: null }),
    async matchMakeup(stageId) {
      const makeupDb = await compute.makeup(chain.getState().chain, stageId)
      const stage = chain.getState().chain.stages.find(({ id }) => id === stageId)
      const makeup = stage && stageDefinitions[stage.kind].makeup
      if (makeupDb === null || !makeup) return false
      chain.getState().edit(setSetting(stageId, makeup.key, makeupDb))
      return true
    },
  }
}
