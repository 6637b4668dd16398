import type { BandSettings, ChainDoc, Scope } from '../core'
import { isAlike } from './same-parts'

/**
 * What is compared once the chain has changed. Bands have no names, only places: a band is followed to its new place
 * where others of its equaliser came or went, and where it went itself, its stage is compared.
 */
export function scopeAfter(scope: Scope, before: ChainDoc, now: ChainDoc): Scope {
  if (scope.kind !== 'band') return scope
  const { stageId, bandIndex } = scope
  const [earlier, later] = [bandsOf(before, stageId), bandsOf(now, stageId)]
  if (!earlier || !later || earlier.length === later.length) return scope
  const place = placeAfter(earlier, later, bandIndex)
  if (place === bandIndex) return scope
  return place === null ? { kind: 'stage', stageId } : { ...scope, bandIndex: place }
}

/** The place of a band among those that are left as they were before and behind what came or went; else null. */
function placeAfter(
  before: readonly BandSettings[],
  now: readonly BandSettings[],
  bandIndex: number,
): number | null {
  const shorter = Math.min(before.length, now.length)
  const moved = now.length - before.length
  let first = 0
  while (first < shorter && isAlike(before[first], now[first])) first++
  let last = 0
  while (last < shorter - first && isAlike(before.at(-1 - last), now.at(-1 - last))) last++
  if (bandIndex < first) return bandIndex
  return bandIndex >= before.length - last ? bandIndex + moved : null
}

function bandsOf({ stages }: ChainDoc, stageId: string): readonly BandSettings[] | null {
  const stage = stages.find(({ id }) => id === stageId)
  return stage?.kind === 'equaliser' ? stage.settings.bands : null
}
