import { type BandSettings, bandsOf, type ChainDoc, isAlike, type Scope } from '../../core'
import type { ChainContent } from '../chain/chain-store'
import type { Snapshots } from '../chain/snapshots'

/**
 * What is compared once the chain, its stored versions or the selection have changed: a stage or band that is compared
 * is one of the selected stage, and stored versions are those that are stored now.
 */
export function scopeAfter(scope: Scope, before: ChainContent, now: ChainContent): Scope {
  if (scope.kind === 'snapshots')
    return now.snapshots === before.snapshots ? scope : snapshotScope(now.snapshots)
  const followed = now.chain === before.chain ? scope : bandAfter(scope, before.chain, now.chain)
  if (followed.kind === 'chain' || followed.stageId === now.selectedId) return followed
  return stageScope(now.selectedId)
}

/** Compares a stage; the whole chain where there is none. */
export function stageScope(stageId: string | null): Scope {
  return stageId === null ? { kind: 'chain' } : { kind: 'stage', stageId }
}

/** Compares the first band of a stage that is on, or its first; the stage itself where it has no bands. */
export function bandScope(chain: ChainDoc, stageId: string | null): Scope {
  const bands = stageId === null ? null : bandsIn(chain, stageId)
  if (stageId === null || !bands || bands.length === 0) return stageScope(stageId)
  return {
    kind: 'band',
    stageId,
    bandIndex: Math.max(
      0,
      bands.findIndex(({ on }) => on),
    ),
  }
}

/** Compares A with B; the one that is not stored is the current chain. Without both, the whole chain is compared. */
export function snapshotScope({ a, b }: Snapshots): Scope {
  return a || b ? { kind: 'snapshots', a, b } : { kind: 'chain' }
}

type StageScope = Exclude<Scope, { kind: 'snapshots' }>

/**
 * Bands have no names, only positions: a band is followed to its new position where others of its stage came or
 * went, and where it went itself, its stage is compared.
 */
function bandAfter(scope: StageScope, before: ChainDoc, now: ChainDoc): StageScope {
  if (scope.kind !== 'band') return scope
  const { stageId, bandIndex } = scope
  const [earlier, later] = [bandsIn(before, stageId), bandsIn(now, stageId)]
  if (!earlier || !later || earlier.length === later.length) return scope
  const place = placeAfter(earlier, later, bandIndex)
  if (place === bandIndex) return scope
  return place === null ? { kind: 'stage', stageId } : { ...scope, bandIndex: place }
}

/** The position of a band among those that are unchanged before and behind what came or went; else null. */
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

function bandsIn({ stages }: ChainDoc, stageId: string): readonly BandSettings[] | null {
  const stage = stages.find(({ id }) => id === stageId)
  return stage ? bandsOf(stage) : null
}
