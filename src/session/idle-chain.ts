import { type ChainDoc, chainOf, type StageDoc } from '../core'

/**
 * The chain as it would pass a take in which it finds nothing to do. What the whole chain removed is the difference
 * to this, and not to its bypass: a de-esser turns the phase of everything, also where it takes nothing away, and
 * the difference to what was not turned would be as loud as the take.
 */
export function idleChain(chain: ChainDoc): ChainDoc {
  return chainOf(chain.stages.map(idle))
}

function idle(stage: StageDoc): StageDoc {
  if (stage.kind !== 'de-esser') return { ...stage, on: false }
  return { ...stage, settings: { ...stage.settings, rangeDb: 0 } }
}
