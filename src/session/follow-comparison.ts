import type { StoreApi } from 'zustand/vanilla'
import type { Compute } from '../compute/compute'
import type { StretchTrace } from '../compute/lanes/live-traces'
import { comparisonOf, frameCount } from '../core'
import type { ChainState } from './chain/chain-store'
import type { EvidenceState } from './evidence-store'
import { LoopFollower } from './follow-loop'
import { liveStretch } from './follow-stretch'
import type { ListenState } from './listening/listen-store'
import { followed } from './live-trace'
import type { TakeState } from './take/take-store'
import type { ViewState } from './take/view-store'
import { TracePace } from './trace-pace'

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly listen: StoreApi<ListenState>
  readonly evidence: StoreApi<EvidenceState>
  readonly view: StoreApi<ViewState>
}

const NO_TRACES: EvidenceState['liveTraces'] = new Map()

/**
 * Keeps the evidence up to date with the take, the chain, what is compared and the loop: newest wins. While the
 * chain changes, gain traces of what is seen come ahead, put in place once for each frame of the screen.
 * @param atNextFrame calls what it is given when the next frame is made
 * @returns asks for the evidence once more, as it is wanted now
 */
export function followComparison(
  { chain, take, listen, evidence, view }: Stores,
  worker: Pick<Compute, 'evidence' | 'loopEvidence' | 'handRests'>,
  atNextFrame: (then: () => void) => void = (then) => void requestAnimationFrame(then),
): () => void {
  const pace = new TracePace(atNextFrame)
  const loopFollower = new LoopFollower(evidence, worker)
  let asked = 0
  /** The gesture that changed the chain last has ended, maybe before figures were asked for. */
  let isResting = false
  /** Come since the last frame, in order. */
  let come: StretchTrace[] = []

  const placeTraces = () => {
    const sound = take.getState().take?.sound
    const { liveTraces, evidence: found } = evidence.getState()
    if (!sound || come.length === 0) return
    const placed = new Map(liveTraces)
    for (const id of new Set(come.map(({ stageId }) => stageId))) {
      const known = found?.stages.get(id)?.trace ?? null
      const stretches = come.filter(({ stageId }) => stageId === id)
      placed.set(id, followed(liveTraces.get(id), known, stretches, frameCount(sound)))
    }
    come = []
    evidence.setState({ liveTraces: placed })
  }
  const onLiveTraces = (traces: readonly StretchTrace[]) => {
    if (come.length === 0 && traces.length > 0) atNextFrame(placeTraces)
    come.push(...traces)
  }
  /** For what takes the place of all traces that have come. */
  const settle = (state: Partial<EvidenceState>) => {
    come = []
    evidence.setState({ ...state, liveTraces: NO_TRACES })
  }

  const update = async (isMoving: boolean) => {
    if (!take.getState().take?.measures) return
    const request = ++asked
    loopFollower.leave()
    if (evidence.getState().working !== 0) evidence.setState({ working: 0 })
    if (isMoving) await pace.wait(() => request === asked)
    const on = take.getState().take
    if (request !== asked || !on?.measures) return
    const { scope, listeningPoint, loop, positionFrame } = listen.getState()
    const { seen } = view.getState()
    const { sound } = on
    try {
      const comparison = comparisonOf(chain.getState().chain, scope, listeningPoint)
      const live = isMoving ? liveStretch(seen, positionFrame, frameCount(sound), sound.sampleRate) : null
      const onProgress = (share: number) => {
        if (request === asked) evidence.setState({ working: share })
      }
      const onTracesOver = pace.begin()
      const listener = { onProgress, onLiveTraces, onTracesOver }
      const answer = worker.evidence({ comparison, loop, live }, listener)
      if (isResting) worker.handRests()
      const found = await answer.finally(onTracesOver)
      if (request !== asked || !found) return
      settle({ evidence: found, working: null, problem: null })
      void loopFollower.follow(comparison, loop)
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error)
      if (request === asked)
        settle({ working: null, problem: `The figures could not be worked out: ${reason}` })
    }
  }

  chain.subscribe((now, before) => {
    if (now.chain !== before.chain) {
      isResting = false
      void update(true)
    }
    if (now.gesturesEnded !== before.gesturesEnded) {
      isResting = true
      worker.handRests()
    }
  })
  take.subscribe((now, before) => {
    if (now.take?.sound !== before.take?.sound)
      settle({ evidence: null, working: 0, loop: null, isLoopWorking: false })
    if (now.take?.measures !== before.take?.measures) void update(false)
  })
  listen.subscribe((now, before) => {
    if (
      now.scope !== before.scope ||
      now.listeningPoint !== before.listeningPoint ||
      now.loop !== before.loop
    )
      void update(false)
  })
  return () => void update(false)
}
