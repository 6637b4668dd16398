import {
  type ChainDoc,
  itemsOf,
  listeningPointIndexOf,
  numberedBand,
  numberedStage,
  type Scope,
} from '../../core'

/** What would make the two sides differ. */
export type Remedy =
  | { readonly kind: 'hear-up-to'; readonly stageId: string }
  | { readonly kind: 'hear-to-end' }
  | { readonly kind: 'stage-on'; readonly stageId: string }
  | { readonly kind: 'band-on'; readonly stageId: string; readonly bandIndex: number }

/** Why there is nothing to compare, as it follows "Nothing to compare: ", and the one change that would help, if there is one. */
export interface Alike {
  readonly words: string
  readonly remedy: Remedy | null
}

/** Why both sides must be alike: what is compared comes after the listening point, or is off. Null if neither. */
export function alike({ stages }: ChainDoc, scope: Scope, listeningPoint: string | null): Alike | null {
  if (scope.kind === 'snapshots') return null
  const listeningPointIndex = listeningPointIndexOf(stages, listeningPoint)
  if (scope.kind === 'chain') {
    if (stages.length === 0) return { words: 'the chain has no stages', remedy: null }
    if (stages.slice(0, listeningPointIndex + 1).some(({ on }) => on)) return null
    const isLaterOn = stages.some(({ on }) => on)
    return isLaterOn
      ? { words: 'all stages up to the listening point are off', remedy: { kind: 'hear-to-end' } }
      : { words: 'all stages are off', remedy: null }
  }
  const { stageId } = scope
  const index = stages.findIndex(({ id }) => id === stageId)
  const stage = stages[index]
  if (!stage) return null
  const name = numberedStage(index, stage.kind)
  if (index > listeningPointIndex)
    return { words: `${name} comes after the listening point`, remedy: { kind: 'hear-up-to', stageId } }
  if (!stage.on) return { words: `${name} is off`, remedy: { kind: 'stage-on', stageId } }
  if (scope.kind !== 'band') return null
  const { bandIndex } = scope
  if (itemsOf(stage)?.[bandIndex]?.on !== false) return null
  const words = `band ${numberedBand(index, bandIndex)} is off`
  return { words, remedy: { kind: 'band-on', stageId, bandIndex } }
}
