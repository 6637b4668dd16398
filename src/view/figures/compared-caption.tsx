import { type ChainDoc, numberedStage, type Scope, type StageDoc } from '../../core'
import { comparedWords } from '../../session/comparison/compared-words'
import { sideWords, stagesOfWords } from '../../session/comparison/side-words'
import { useChain, useListen } from '../context/app-context'
import { useMeasuredRange } from '../context/use-loop-evidence'

/** What the two sides are, and what of the take was measured. */
export function ComparedCaption() {
  const scope = useListen((state) => state.scope)
  const listeningPoint = useListen((state) => state.listeningPoint)
  // Words, not the chain they are made from: a setting that moves changes none of them.
  const words = useChain(({ chain }) => wordsOf(chain, scope))
  const point = useChain(({ chain }) => pointOf(chain.stages, listeningPoint))
  const place = useChain(({ chain }) => placeOf(scope, chain.stages, listeningPoint))
  const ofOthers = useChain(({ chain }) => stagesOfWords(scope, chain))
  const measured = useMeasuredRange()
  return (
    <span title={`Measured ${place}`}>
      {words}
      {point}, {measured}
      {ofOthers !== null && `. ${ofOthers}`}
    </span>
  )
}

function wordsOf(chain: ChainDoc, scope: Scope): string {
  if (scope.kind === 'snapshots') {
    const { bypassed, processed } = sideWords(scope)
    return `${bypassed} against ${processed}`
  }
  const what = comparedWords(chain, scope, null)
  return `${what.charAt(0).toUpperCase()}${what.slice(1)} against its bypass`
}

function pointOf(stages: readonly StageDoc[], listeningPoint: string | null): string {
  const index = stages.findIndex(({ id }) => id === listeningPoint)
  const last = stages[index]
  return last ? ` after ${numberedStage(index, last.kind)}` : ''
}

/** Where both sides are measured. */
function placeOf(scope: Scope, stages: readonly StageDoc[], listeningPoint: string | null): string {
  const listeningPointIndex = stages.findIndex(({ id }) => id === listeningPoint)
  const last = stages[listeningPointIndex]
  const hasLater = hasLaterStages(scope, last ? stages.slice(0, listeningPointIndex + 1) : stages)
  if (!last) return hasLater ? 'after all later stages' : 'at the end of the chain'
  return `after ${numberedStage(listeningPointIndex, last.kind)}${hasLater ? ', through the stages between' : ''}`
}

/** Whether stages that are on stand between what is compared and where it is measured. */
function hasLaterStages(scope: Scope, heard: readonly StageDoc[]): boolean {
  if (scope.kind === 'chain' || scope.kind === 'snapshots') return false
  const index = heard.findIndex(({ id }) => id === scope.stageId)
  return index >= 0 && heard.slice(index + 1).some(({ on }) => on)
}
