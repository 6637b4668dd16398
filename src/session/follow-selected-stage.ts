import type { StoreApi } from 'zustand/vanilla'
import type { StageDetail } from '../compute/stage-detail'
import type { StageDetails } from '../compute/stage-details'
import type { ChainState } from './chain/chain-store'
import type { DetailState } from './detail-store'
import type { EvidenceState } from './evidence-store'
import type { TakeState } from './take/take-store'

interface Stores {
  readonly chain: StoreApi<ChainState>
  readonly take: StoreApi<TakeState>
  readonly evidence: StoreApi<EvidenceState>
  readonly detail: StoreApi<DetailState>
}

/**
 * Keeps the detail up to date with the selected stage. What is known is there at once; the rest is worked out when the
 * evidence rests. Meanwhile that of the same stage stays: most of its settings leave it as it is.
 */
export function followSelectedStage(
  { chain, take, evidence, detail }: Stores,
  details: Pick<StageDetails, 'known' | 'find'>,
): void {
  let asked = 0

  const show = (stageId: string | null, found: StageDetail | null) => {
    const shown = detail.getState()
    if (shown.stageId !== stageId || !isSame(shown.detail, found)) detail.setState({ stageId, detail: found })
  }
  const update = async () => {
    const request = ++asked
    const { chain: current, selectedId } = chain.getState()
    if (detail.getState().stageId !== selectedId) show(selectedId, null)
    if (selectedId === null || !take.getState().take?.measures) return
    const known = details.known(current, selectedId)
    if (known) return show(selectedId, known)
    if (evidence.getState().working !== null) return
    // Where it fails the evidence says so, which asks the same workers for more; it is asked for again with the next change.
    const found = await details.find(current, selectedId).catch(() => null)
    if (request === asked && found) show(selectedId, found)
  }

  chain.subscribe((now, before) => {
    if (now.chain !== before.chain || now.selectedId !== before.selectedId) void update()
  })
  take.subscribe((now, before) => {
    if (now.take?.sound !== before.take?.sound) show(null, null)
    if (now.take?.measures !== before.take?.measures) void update()
  })
  evidence.subscribe((now, before) => {
    if (now.working === null && before.working !== null) void update()
  })
  void update()
}

function isSame(a: StageDetail | null, b: StageDetail | null): boolean {
  if (a === null || b === null) return a === b
  return (
    a.level === b.level &&
    a.sibilants === b.sibilants &&
    a.harmonics === b.harmonics &&
    a.levels?.before === b.levels?.before &&
    a.levels?.after === b.levels?.after
  )
}
