import {
  type ChainDoc,
  itemsOf,
  listeningPointIndexOf,
  numberedBand,
  numberedStage,
  type Scope,
} from '../../core'

/** What would make both sides differ. */
export type Mend =
  | { readonly kind: 'ear-after'; readonly stageId: string }
  | { readonly kind: 'ear-to-end' }
  | { readonly kind: 'stage-on'; readonly stageId: string }
  | { readonly kind: 'band-on'; readonly stageId: string; readonly bandIndex: number }

/** Why there is nothing to compare, as it follows "Nothing to compare: ", and the one thing that would mend it, if any. */
export interface Alike {
  readonly words: string
  readonly mend: Mend | null
}

/** Why both sides must be alike: what is compared stands after the ear, or is off. Null where neither is so. */
export function alike({ stages }: ChainDoc, scope: Scope, listeningPoint: string | null): Alike | null {
  if (scope.kind === 'snapshots') return null
  const listeningPointIndex = listeningPointIndexOf(stages, listeningPoint)
  if (scope.kind === 'chain') {
    if (stages.length === 0) return { words: 'the chain has no stages', mend: null }
    if (stages.slice(0, listeningPointIndex + 1).some(({ on }) => on)) return null
    const isLaterOn = stages.some(({ on }) => on)
    return isLaterOn
      ? { words: 'all stages up to the ear are off', mend: { kind: 'ear-to-end' } }
      : { words: 'all stages are off', mend: null }
  }
  const { stageId } = scope
  const index = stages.findIndex(({ id }) => id === stageId)
  const stage = stages[index]
  if (!stage) return null
  const name = numberedStage(index, stage.kind)
  if (index > listeningPointIndex)
    return { words: `${name} stands after the ear`, mend: { kind: 'ear-after', stageId } }
  if (!stage.on) return { words: `${name} is off`, mend: { kind: 'stage-on', stageId } }
  if (scope.kind !== 'band') return null
  const { bandIndex } = scope
  if (itemsOf(stage)?.[bandIndex]?.on !== false) return null
  const words = `band ${numberedBand(index, bandIndex)} is off`
  return { words, mend: { kind: 'band-on', stageId, bandIndex } }
}
