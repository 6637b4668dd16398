import { bandLetter, numberedStage, type Scope, type StageDoc } from '../../core'
import { sideWords, stagesOfWords } from '../../session/comparison/side-words'
import { useChain, useEvidence, useListen } from '../context/app-context'
import { inWords } from '../words/in-words'
import { gapWords } from './figures'

/** What the two sides are, and how they are matched. */
export function WhatIsCompared() {
  const scope = useListen((state) => state.scope)
  const sides = sideWords(scope)
  const listeningPoint = useListen((state) => state.listeningPoint)
  // Words, not the chain they are made from: a setting that moves changes none of them.
  const sentence = useChain(({ chain }) => sentenceOf(scope, chain.stages))
  const place = useChain(({ chain }) => placeOf(scope, chain.stages, listeningPoint))
  const ofOthers = useChain(({ chain }) => stagesOfWords(scope, chain))
  const matched = useListen((state) => state.matched)
  const bypassed = useEvidence((state) => state.evidence?.bypassed.measures)
  const processed = useEvidence((state) => state.evidence?.processed.measures)
  const matching = useEvidence((state) => state.evidence?.matching)
  const gaps = bypassed && processed ? gapWords([bypassed, processed]) : null
  return (
    <>
      {sentence} Measured {place}
      {!matched && '; played at their own levels.'}
      {matched && !matching && '.'}
      {matched && matching?.measuredOver === 'nothing' && '; too little sound to match.'}
      {matched && matching && matching.measuredOver !== 'nothing' && (
        <>
          ; played matched over the {matching.measuredOver}: {sides.bypassed} {gain(matching.bypassedDb)},{' '}
          {sides.processed} {gain(matching.processedDb)}.
        </>
      )}
      {ofOthers !== null && ` ${ofOthers}`}
      {gaps !== null && ` ${gaps}`}
    </>
  )
}

function sentenceOf(scope: Scope, stages: readonly StageDoc[]): string {
  if (scope.kind === 'chain') return 'The whole chain against its bypass.'
  if (scope.kind === 'snapshots') {
    const { bypassed, processed: other } = sideWords(scope)
    return `Two versions of the chain: ${bypassed} against ${other}.`
  }
  const index = stages.findIndex(({ id }) => id === scope.stageId)
  const stage = stages[index]
  if (!stage) return 'The chain against itself: what was compared has been removed.'
  const name = numberedStage(index, stage.kind)
  const what = scope.kind === 'band' ? `${name}, band ${bandLetter(scope.bandIndex)}` : name
  return `${what} against its bypass; everything else is unchanged.`
}

/** Where both sides are measured. */
function placeOf(scope: Scope, stages: readonly StageDoc[], listeningPoint: string | null): string {
  const listeningPointIndex = stages.findIndex(({ id }) => id === listeningPoint)
  const last = stages[listeningPointIndex]
  const hasLater = hasLaterStages(scope, last ? stages.slice(0, listeningPointIndex + 1) : stages)
  if (!last) return endWords(scope, hasLater)
  return `after ${numberedStage(listeningPointIndex, last.kind)}${hasLater ? ', through the stages between' : ''}`
}

/** Whether stages that are on stand between what is compared and where it is measured. */
function hasLaterStages(scope: Scope, heard: readonly StageDoc[]): boolean {
  if (scope.kind === 'chain' || scope.kind === 'snapshots') return false
  const index = heard.findIndex(({ id }) => id === scope.stageId)
  return index >= 0 && heard.slice(index + 1).some(({ on }) => on)
}

/** Where it is measured while the listening point is at the end. */
function endWords({ kind }: Scope, hasLater: boolean): string {
  if (hasLater) return 'after all later stages'
  return kind === 'chain' ? 'at its end' : 'at the end of the chain'
}

function gain(db: number): string {
  return `${inWords(db)} dB`
}
