import { partOf } from '../../core'
import { addressOf, type FactName, type FactValues, factsInFront, type Want } from '../facts/fact-values'
import type { Job } from './job'

export interface FactsInput {
  readonly take: string
  /** Worked out in this order: from fewer stages to more, so that each begins where the one before it ended. */
  readonly wants: readonly Want[]
  /** What is known already and may help. */
  readonly known: readonly KnownFact[]
  /** The sound behind these stages will be asked for again: what changes lies behind them. */
  readonly keep: Want['stages'] | null
}

/** A fact about the sound behind `stages`. */
export type KnownFact = {
  readonly [Name in FactName]: {
    readonly stages: Want['stages']
    readonly name: Name
    readonly value: FactValues[Name]
  }
}[FactName]

/** A fact as it is handed on; none where it is not known. */
export function knownFact<Name extends FactName>(
  stages: Want['stages'],
  name: Name,
  value: FactValues[Name] | undefined,
): KnownFact[] {
  // Name and value belong together, as the table has them.
  return value === undefined ? [] : [{ stages, name, value } as KnownFact & { name: Name }]
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
export const factsJob: Job<FactsInput, null, FactPiece> = function* ({ take, wants, known, keep }, tools) {
  for (const { stages, name, value } of known) tools.learn({ take, stages }, name, value)
  if (keep) tools.keep({ take, stages: keep })
  const total = wants.reduce((sum, { names }) => sum + 1 + names.length, 0)
  let done = 0
  for (const [index, want] of wants.entries()) {
    const address = addressOf(take, want)
    const isInFront = want.names.every((name) => factsInFront.has(name))
    if (!isInFront) yield* partOf(tools.soundWithLeads(address), done / total, (done + 1) / total)
    done++
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
