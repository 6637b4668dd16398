import type { StageItem } from '../stages/stage-definition'
import { itemsOf } from '../stages/stage-items'
import type { ChainDoc } from './chain-doc'
import type { Scope } from './compare'
import { isAlike } from './same-parts'

/**
 * What is compared once the chain has changed. Bands have no ids, only positions: a band is followed to its new position
 * where others of its stage came or went, and where it went itself, its stage is compared.
 */
export function scopeAfter(scope: Scope, before: ChainDoc, now: ChainDoc): Scope {
  if (scope.kind !== 'band') return scope
  const { stageId, bandIndex } = scope
  const [earlier, later] = [itemsIn(before, stageId), itemsIn(now, stageId)]
  if (!earlier || !later || earlier.length === later.length) return scope
  const index = indexAfter(earlier, later, bandIndex)
  if (index === bandIndex) return scope
  return index === null ? { kind: 'stage', stageId } : { ...scope, bandIndex: index }
}

/** The index of an item among those that stayed as they were, before and after what came or went; else null. */
function indexAfter(before: readonly StageItem[], now: readonly StageItem[], index: number): number | null {
  const shorter = Math.min(before.length, now.length)
  const moved = now.length - before.length
  let first = 0
  while (first < shorter && isAlike(before[first], now[first])) first++
  let last = 0
  while (last < shorter - first && isAlike(before.at(-1 - last), now.at(-1 - last))) last++
  if (index < first) return index
  return index >= before.length - last ? index + moved : null
}

function itemsIn({ stages }: ChainDoc, stageId: string): readonly StageItem[] | null {
  const stage = stages.find(({ id }) => id === stageId)
  return stage ? itemsOf(stage) : null
}
