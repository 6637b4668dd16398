import type { StageDoc } from '../stages'

/** What the user builds, saves and shares: stages in the order the sound runs through them. Plain JSON. */
export interface ChainDoc {
  readonly format: 'evenhand-chain'
  readonly version: 1
  readonly stages: readonly StageDoc[]
}

/** The most stages a chain may have. */
export const MAX_STAGES = 32

/** A chain of the given stages. */
export function chainOf(stages: readonly StageDoc[]): ChainDoc {
  return { format: 'evenhand-chain', version: 1, stages }
}

/** The chain with every stage switched off: the reference of a whole-chain comparison. */
export function bypassed(chain: ChainDoc): ChainDoc {
  return chainOf(chain.stages.map((stage) => ({ ...stage, on: false })))
}

/** Every setting at its value as JSON text. An infinite ratio, which JSON cannot hold, is written "infinity". */
export function chainToJson(chain: ChainDoc): string {
  return JSON.stringify(
    chain,
    (_, value: unknown) => (value === Number.POSITIVE_INFINITY ? 'infinity' : value),
    2,
  )
}
