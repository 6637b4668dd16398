import type { StoreApi } from 'zustand/vanilla'
import type { StretchTrace } from '../audio/evidence/evidence'
import { withStretch } from '../audio/evidence/live-traces'
import type { BenchWorker } from '../audio/worker/bench-worker'
import { comparisonOf, frameCount } from '../core'
import type { ChainState } from './chain-store'
import type { EvidenceState } from './evidence-store'
import { liveStretch } from './follow-stretch'
import type { ListenState } from './listen-store'
import type { TakeState } from './take-store'

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly listen: StoreApi<ListenState>
  readonly evidence: StoreApi<EvidenceState>
}

const NO_TRACES: EvidenceState['liveTraces'] = new Map()

/**
 * Keeps the evidence up to date with the take, the chain, what is compared and the loop: newest wins. While the
 * chain changes, gain traces of what is seen come ahead.
 */
export function followComparison(
  { chain, take, listen, evidence }: Stores,
  worker: Pick<BenchWorker, 'evidence'>,
): void {
  let asked = 0

  const onLiveTrace = (stretch: StretchTrace) => {
    const sound = take.getState().take?.sound
    if (!sound) return
    const { liveTraces, evidence: found } = evidence.getState()
    const before = liveTraces.get(stretch.stageId) ?? found?.stages.get(stretch.stageId)?.trace ?? null
    const trace = withStretch(before, stretch, frameCount(sound))
    evidence.setState({ liveTraces: new Map(liveTraces).set(stretch.stageId, trace) })
  }

  const update = async (isMoving: boolean) => {
    const on = take.getState().take
    if (!on?.measures) return
    const request = ++asked
    const { scope, earAfterId, loop, positionFrame } = listen.getState()
    const { seen, working } = evidence.getState()
    if (working !== 0) evidence.setState({ working: 0 })
    const { sound } = on
    try {
      const comparison = comparisonOf(chain.getState().chain, scope, earAfterId)
      const live = isMoving ? liveStretch(seen, positionFrame, frameCount(sound), sound.sampleRate) : null
      const onProgress = (share: number) => {
        if (request === asked) evidence.setState({ working: share })
      }
      const found = await worker.evidence({ comparison, loop, live }, { onProgress, onLiveTrace })
      if (request === asked && found)
        evidence.setState({ evidence: found, working: null, problem: null, liveTraces: NO_TRACES })
    } catch (error) {
      const reason = error instanceof Error ? error.message : String(error)
      if (request === asked)
        evidence.setState({
          working: null,
          problem: `The figures could not be worked out: ${reason}`,
          liveTraces: NO_TRACES,
        })
    }
  }

  chain.subscribe((now, before) => {
    if (now.chain !== before.chain) void update(true)
  })
  take.subscribe((now, before) => {
    if (now.take?.sound !== before.take?.sound)
      evidence.setState({ evidence: null, working: 0, liveTraces: NO_TRACES, seen: null })
    if (now.take?.measures !== before.take?.measures) void update(false)
  })
  listen.subscribe((now, before) => {
    if (now.scope !== before.scope || now.earAfterId !== before.earAfterId || now.loop !== before.loop)
      void update(false)
  })
}
