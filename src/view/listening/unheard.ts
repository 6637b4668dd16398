import type { ChainDoc } from '../../core'
import type { ListenState } from '../../session/listening/listen-store'

/** Whether a change of the chain is not in what is heard: the side that is heard knows nothing of it. */
export function isUnheard(
  before: ChainDoc,
  now: ChainDoc,
  { heard, scope }: Pick<ListenState, 'heard' | 'scope'>,
): boolean {
  if (scope.kind === 'snapshots') {
    const isKept = { bypassed: scope.a !== null, processed: scope.b !== null }
    return heard === 'difference' ? isKept.bypassed && isKept.processed : isKept[heard]
  }
  if (heard !== 'bypassed') return false
  if (scope.kind === 'chain') return true
  // Other bands of the same stage are heard.
  if (scope.kind === 'band' || now.stages.length !== before.stages.length) return false
  return now.stages.every((stage, index) => stage === before.stages[index] || stage.id === scope.stageId)
}
