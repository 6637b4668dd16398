import { idleStage } from '../stages/stage-facts'
import { type ChainDoc, chainOf } from './chain-doc'

/**
 * The chain as it would pass a take in which it finds nothing to do. The difference that the whole chain makes is taken
 * from this, not from its bypass: a de-esser turns the phase of everything, also where it reduces nothing, and the
 * difference to a sound of another phase would be as loud as the take.
 */
export function idleChain(chain: ChainDoc): ChainDoc {
  return chainOf(chain.stages.map((stage) => idleStage(stage)))
}
