import { type StageDoc, type StageKind, stageDefinitions } from '../stages'
import type { BandSettings } from '../stages/equaliser/band'
import { type ChainDoc, chainOf } from './chain-doc'

/**
 * What is compared: the whole chain, one stage of it or one band of an equaliser, each with its own absence; or two
 * versions that were kept, where null is the chain as it is now.
 */
export type Scope =
  | { readonly kind: 'chain' }
  | { readonly kind: 'stage'; readonly stageId: string }
  | { readonly kind: 'band'; readonly stageId: string; readonly bandIndex: number }
  | { readonly kind: 'snapshots'; readonly a: ChainDoc | null; readonly b: ChainDoc | null }

/** The two sides of a comparison. Unless they are kept versions, both have the same stages, and the same delay. */
export interface Comparison {
  readonly bypassed: ChainDoc
  readonly processed: ChainDoc
}

/**
 * The two sides of comparing `scope` with its bypass, everything else as it is; of kept versions, `without` is A
 * and `with` is B. A scope that the chain does not have (any more) compares the chain with itself.
 * @param earAfterId hear the sound up to behind this stage, on both sides; null: to the end
 */
export function comparisonOf(
  chain: ChainDoc,
  scope: Scope,
  listeningPoint: string | null = null,
): Comparison {
  if (scope.kind === 'snapshots')
    return {
      bypassed: upTo(scope.a ?? chain, listeningPoint),
      processed: upTo(scope.b ?? chain, listeningPoint),
    }
  const heard = upTo(chain, listeningPoint)
  return { bypassed: bypassed(heard, scope), processed: heard }
}

function upTo(chain: ChainDoc, listeningPoint: string | null): ChainDoc {
  const last = chain.stages.findIndex(({ id }) => id === listeningPoint)
  if (last < 0) return chain
  return chainOf(chain.stages.map((stage, index) => (index > last ? { ...stage, on: false } : stage)))
}

function bypassed(chain: ChainDoc, scope: Exclude<Scope, { kind: 'snapshots' }>): ChainDoc {
  return chainOf(
    chain.stages.map((stage) => {
      if (scope.kind === 'chain') return { ...stage, on: false }
      if (stage.id !== scope.stageId) return stage
      return scope.kind === 'stage' ? { ...stage, on: false } : withoutBand(stage, scope.bandIndex)
    }),
  )
}

function withoutBand(stage: StageDoc, bandIndex: number): StageDoc {
  if (stage.kind !== 'equaliser') return stage
  const bands = stage.settings.bands.map(
    (band, index): BandSettings => (index === bandIndex ? { ...band, on: false } : band),
  )
  return { ...stage, settings: { ...stage.settings, bands } }
}

/** One plain sentence of what `stage` does now. */
export function describeStage<Kind extends StageKind>(stage: StageDoc<Kind>): string {
  const definition = stageDefinitions[stage.kind]
  if (stage.on) return definition.describe(stage.settings)
  const { purpose } = definition
  return `Off: ${purpose.charAt(0).toLowerCase()}${purpose.slice(1).replace(/\.$/, '')}`
}
