import type { StageDoc } from '../stages'
import { withItemSwitched } from '../stages/stage-items'
import { type ChainDoc, chainOf } from './chain-doc'

/** A stored version of a chain. */
export interface Snapshot {
  /** What its user calls it; '' where it has no name. */
  readonly name: string
  readonly chain: ChainDoc
}

/**
 * What is compared: the whole chain, one stage of it or one band of a stage, each with its bypass; or two snapshots,
 * where null is the chain as it is now.
 */
export type Scope =
  | { readonly kind: 'chain' }
  | { readonly kind: 'stage'; readonly stageId: string }
  | { readonly kind: 'band'; readonly stageId: string; readonly bandIndex: number }
  | { readonly kind: 'snapshots'; readonly a: Snapshot | null; readonly b: Snapshot | null }

/** The two sides of a comparison. Unless they are snapshots, both have the same stages, and the same delay. */
export interface Comparison {
  readonly bypassed: ChainDoc
  readonly processed: ChainDoc
}

/**
 * The two sides of comparing `scope` with its bypass, everything else unchanged; of snapshots, `bypassed` is A and
 * `processed` is B. A scope that is not in the chain (any more) compares the chain with itself.
 * @param listeningPoint hear both sides up to and including this stage; null: to the end
 */
export function comparisonOf(
  chain: ChainDoc,
  scope: Scope,
  listeningPoint: string | null = null,
): Comparison {
  if (scope.kind === 'snapshots')
    return {
      bypassed: upTo(scope.a?.chain ?? chain, listeningPoint),
      processed: upTo(scope.b?.chain ?? chain, listeningPoint),
    }
  const heard = upTo(chain, listeningPoint)
  return { bypassed: bypassed(heard, scope), processed: heard }
}

/**
 * Position of the last stage that is heard, from 0. A listening point that is null, or a stage that is no longer there,
 * is the end of the chain; -1 while there are no stages.
 */
export function listeningPointIndexOf(stages: readonly StageDoc[], listeningPoint: string | null): number {
  const found = stages.findIndex(({ id }) => id === listeningPoint)
  return found < 0 ? stages.length - 1 : found
}

function upTo(chain: ChainDoc, listeningPoint: string | null): ChainDoc {
  const last = listeningPointIndexOf(chain.stages, listeningPoint)
  if (last === chain.stages.length - 1) return chain
  return chainOf(chain.stages.map((stage, index) => (index > last ? { ...stage, on: false } : stage)))
}

function bypassed(chain: ChainDoc, scope: Exclude<Scope, { kind: 'snapshots' }>): ChainDoc {
  return chainOf(
    chain.stages.map((stage) => {
      if (scope.kind === 'chain') return { ...stage, on: false }
      if (stage.id !== scope.stageId) return stage
      return scope.kind === 'stage'
        ? { ...stage, on: false }
        : withItemSwitched(stage, scope.bandIndex, false)
    }),
  )
}
