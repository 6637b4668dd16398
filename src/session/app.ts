import type { StoreApi } from 'zustand/vanilla'
import { missingOutput } from '../audio/player/output'
import { Player } from '../audio/player/player'
import { Compute } from '../compute/compute'
import { stageDefinitions } from '../core'
import { startingChain } from '../demo'
import { setSetting } from './chain/chain-edits'
import { type ChainState, createChainStore } from './chain/chain-store'
import { Comparing } from './comparison/comparing'
import type { Delivery } from './delivery'
import { createDeliveryStore, type DeliveryState } from './delivery-store'
import { detailFollowing } from './detail-part'
import { createDetailStore, type DetailState } from './detail-store'
import type { SessionSounds } from './document/apply-session'
import type { SessionDoc } from './document/session-doc'
import { sessionOf } from './document/session-of'
import { createEvidenceStore, type EvidenceState } from './evidence-store'
import { followComparison } from './follow-comparison'
import { createListenStore, type ListenState } from './listening/listen-store'
import { Listening } from './listening/listening'
import { deliveryMaking, trialRunning } from './sheet-parts'
import { createTakeStore, type TakeState } from './take/take-store'
import { Takes } from './take/takes'
import { createViewStore, type ViewState } from './take/view-store'
import { createTrialStore, type TrialState } from './trials/trial-store'
import type { Trials } from './trials/trials'

/** Reads the state of the app as one document, and puts it into the state of another. */
export interface SessionAccess {
  read(): SessionDoc
  /**
   * Rejects with a `SessionError` where `json` is no session document; nothing changes then.
   * @param json already parsed from text
   * @param sounds those it refers to, as far as they were found
   */
  open(json: unknown, sounds?: SessionSounds): Promise<void>
}

/** What opens a session document is fetched when there is one: the page loads sooner without it. */
const sessionOpening = () => import('./document/open-session')

/** The application's root object: the state (stores) and the actions that change it. */
export interface App {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly listen: StoreApi<ListenState>
  readonly evidence: StoreApi<EvidenceState>
  readonly detail: StoreApi<DetailState>
  readonly delivery: StoreApi<DeliveryState>
  readonly trial: StoreApi<TrialState>
  readonly view: StoreApi<ViewState>
  /** Has jobs about the take done. */
  readonly compute: Pick<Compute, 'run' | 'takeHash' | 'tiles'>
  /** Loads takes and backings. */
  readonly takes: Takes
  /** Plays, loops and switches sides. */
  readonly listening: Listening
  /** Decides what is compared. */
  readonly comparing: Comparing
  /** Makes the delivered file. Throws until `deliveryMaking` has been loaded. */
  readonly deliveries: Delivery
  /** Runs blind trials of what is compared. Throws until `trialRunning` has been loaded. */
  readonly trials: Trials
  /** The state as one document. */
  readonly session: SessionAccess
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
  // Its picture shows most at once: level, threshold and what it does.
  const chain = createChainStore(startingChain(), 'level')
  const take = createTakeStore()
  const listen = createListenStore()
  const evidence = createEvidenceStore()
  const detail = createDetailStore()
  const delivery = createDeliveryStore()
  const trial = createTrialStore()
  const view = createViewStore(take)
  const compute = new Compute()
  const player = new Player({
    onReport: (report) => listening.receive(report),
    onError: (error) => listening.fail(error),
  })
  const listening = new Listening({ chain, take, listen, evidence }, player)
  const noOutput = missingOutput()
  if (noOutput) listening.fail(noOutput)
  const comparing = new Comparing({ chain, listen })
  const takes = new Takes(take, compute, (name) => listening.loaded(name))
  const askAgain = followComparison({ chain, take, listen, evidence, view }, compute)
  // Where it cannot be fetched, the next take asks for it again.
  const stopWaiting = take.subscribe(async (now, before) => {
    if (!now.take || now.take.sound === before.take?.sound || detailFollowing.loaded) return
    const part = await detailFollowing.load().catch(() => null)
    if (!part) return
    stopWaiting()
    part.followSelectedStage({ chain, take, evidence, detail }, new part.StageDetails(compute))
  })
  let deliveries: Delivery | null = null
  let trials: Trials | null = null
  const app: App = {
    chain,
    take,
    listen,
    evidence,
    detail,
    delivery,
    trial,
    view,
    compute,
    takes,
    listening,
    comparing,
    get deliveries() {
      if (!deliveryMaking.loaded) throw new Error('a delivery asked for before what makes it was loaded')
      deliveries ??= new deliveryMaking.loaded.Delivery({ chain, take, delivery }, compute)
      return deliveries
    },
    get trials() {
      if (!trialRunning.loaded) throw new Error('trials asked for before what runs them was loaded')
      const { randomBit, Trials } = trialRunning.loaded
      const sources = { randomBit, now: () => new Date() }
      trials ??= new Trials({ chain, take, listen, evidence, trial }, listening, sources)
      return trials
    },
    session: {
      read: () => sessionOf(app),
      async open(json, sounds) {
        const { openSession } = await sessionOpening()
        openSession(app, json, sounds)
      },
    },
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
  return app
}
