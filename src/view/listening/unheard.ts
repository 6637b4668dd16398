import type { ChainDoc } from '../../core'
import type { ListenState } from '../../session/listening/listen-store'

/** Whether a change of the chain is not in what is heard: the side that is heard does not include it. */
export function isUnheard(
  before: ChainDoc,
  now: ChainDoc,
  { heard, scope }: Pick<ListenState, 'heard' | 'scope'>,
): boolean {
  if (scope.kind === 'snapshots') {
    const isStored = { bypassed: scope.a !== null, processed: scope.b !== null }
    return heard === 'difference' ? isStored.bypassed && isStored.processed : isStored[heard]
  }
  if (heard !== 'bypassed') return false
  if (scope.kind === 'chain') return true
  // Other bands of the same stage are heard.
  if (scope.kind === 'band' || now.stages.length !== before.stages.length) return false
  return now.stages.every((stage, index) => stage === before.stages[index] || stage.id === scope.stageId)
}
