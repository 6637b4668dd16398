import { partOf } from '../../core'
import { addressOf, type FactName, type FactValues, type Want } from '../facts/fact-values'
import type { Job } from './job'

export interface FactsInput {
  readonly take: string
  /** Worked out in this order: from fewer stages to more, so that each begins where the one before it ended. */
  readonly wants: readonly Want[]
  /** Of the take, where they are known already. */
  readonly places: FactValues['places'] | null
  /** The sound behind these stages will be asked for again: what changes lies behind them. */
  readonly keep: Want['stages'] | null
}

/** One fact, as soon as it is known. */
export type FactPiece = {
  readonly [Name in FactName]: {
    readonly want: number
    readonly name: Name
    readonly value: FactValues[Name]
  }
}[FactName]

/** Works out facts, and tells each as it is found. */
export const factsJob: Job<FactsInput, null, FactPiece> = function* ({ take, wants, places, keep }, tools) {
  if (places) tools.learn({ take, stages: [] }, 'places', places)
  if (keep) tools.keep({ take, stages: keep })
  const total = wants.reduce((sum, { names }) => sum + 1 + names.length, 0)
  let done = 0
  for (const [index, want] of wants.entries()) {
    const address = addressOf(take, want)
    yield* partOf(tools.soundWithLeads(address), done / total, ++done / total)
    for (const name of want.names) {
      const value = yield* partOf(tools.fact(address, name), done / total, ++done / total)
      tools.tell(pieceOf(index, name, value))
    }
  }
  return null
}

function pieceOf<Name extends FactName>(want: number, name: Name, value: FactValues[Name]) {
  return { want, name, value } as FactPiece & { name: Name }
}
