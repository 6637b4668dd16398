import { bandLetter, type ChainDoc, numberedStage, type Scope } from '../../core'
import { sideWords } from './side-words'

/**
 * What is compared, in words: "the whole chain", "3 Compressor", "1 Equaliser, band b", which stand against their
 * bypass, or "boosts first against boosts last".
 */
export function comparedWords(chain: ChainDoc, scope: Scope, listeningPoint: string | null): string {
  const what = scopeWords(chain, scope)
  const last = listeningPoint === null ? null : stageName(chain, listeningPoint)
  return last === null ? what : `${what}, heard after ${last}`
}

function scopeWords(chain: ChainDoc, scope: Scope): string {
  if (scope.kind === 'chain') return 'the whole chain'
  if (scope.kind === 'snapshots') return `${sideWords(scope).bypassed} against ${sideWords(scope).processed}`
  const stage = stageName(chain, scope.stageId) ?? 'a stage that is gone'
  return scope.kind === 'band' ? `${stage}, band ${bandLetter(scope.bandIndex)}` : stage
}

function stageName({ stages }: ChainDoc, stageId: string): string | null {
  const index = stages.findIndex(({ id }) => id === stageId)
  const stage = stages[index]
  return stage ? numberedStage(index, stage.kind) : null
}
