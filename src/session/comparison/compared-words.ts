import { bandLetter, type ChainDoc, numberedStage, type Scope } from '../../core'
import { sideWords } from './side-words'

/** What is compared with its bypass, in words: "the whole chain", "3 Compressor", "1 Equaliser, band b". */
export function comparedWords(chain: ChainDoc, scope: Scope, listeningPoint: string | null): string {
  const what = scopeWords(chain, scope)
  const last = listeningPoint === null ? null : stageName(chain, listeningPoint)
  return last === null ? what : `${what}, heard after ${last}`
}

function scopeWords(chain: ChainDoc, scope: Scope): string {
  if (scope.kind === 'chain') return 'the whole chain'
  if (scope.kind === 'snapshots')
    return `${sideWords(scope).bypassed} (without) and ${sideWords(scope).processed} (with)`
  const stage = stageName(chain, scope.stageId) ?? 'a stage that is gone'
  return scope.kind === 'band' ? `${stage}, band ${bandLetter(scope.bandIndex)}` : stage
}

function stageName({ stages }: ChainDoc, stageId: string): string | null {
  const index = stages.findIndex(({ id }) => id === stageId)
  const stage = stages[index]
  return stage ? numberedStage(index, stage.kind) : null
}
