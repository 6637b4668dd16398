import type { Comparison, FrameRange, ReductionSummary } from '../../core'
import type { SoundAddress } from '../address'
import type { LoopEvidence, LoopSide } from '../evidence'
import type { FactStore } from '../facts/fact-store'
import type { FactName, Want } from '../facts/fact-values'

/** What is shown of a side over a loop. */
const SIDE: readonly FactName[] = ['measures', 'spectrum']

/** Facts that the evidence of a loop is put together from, from fewer stages to more. */
export function loopWantsOf({ bypassed, processed }: Comparison, range: FrameRange): readonly Want[] {
  const last = processed.stages.findLastIndex(({ on }) => on)
  const behind = processed.stages.flatMap((stage, k): Want[] =>
    stage.on && k !== last ? [{ stages: processed.stages.slice(0, k + 1), range, names: ['reduction'] }] : [],
  )
  const end: Want = { stages: processed.stages, range, names: last < 0 ? SIDE : [...SIDE, 'reduction'] }
  return [{ stages: bypassed.stages, range, names: SIDE }, ...behind, end]
}

/** Puts the evidence of a loop together from facts; null where some of them are not known. */
export function selectLoop(
  facts: FactStore,
  take: string,
  comparison: Comparison,
  range: FrameRange,
): LoopEvidence | null {
  const { bypassed, processed } = comparison
  const sides = [bypassed, processed].map(({ stages }) => sideOf(facts, { take, stages, range }))
  const [before, behind] = sides
  const reductions = new Map<string, ReductionSummary>()
  for (const [k, { id, on }] of processed.stages.entries()) {
    if (!on) continue
    const found = facts.get({ take, stages: processed.stages.slice(0, k + 1), range }, 'reduction')
    if (found === undefined) return null
    if (found) reductions.set(id, found)
  }
  if (!before || !behind) return null
  return { range, bypassed: before, processed: behind, reductions, chains: comparison }
}

function sideOf(facts: FactStore, address: SoundAddress): LoopSide | null {
  const measures = facts.get(address, 'measures')
  const spectrum = facts.get(address, 'spectrum')
  return measures && spectrum ? { measures, spectrum } : null
}
