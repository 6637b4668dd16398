import type { MatchingGains } from '../context/app-context'
import { inWords } from '../words/in-words'

/** What matching does right now. */
export interface MatchedWords {
  /** As it follows "matched: ", or stands without it where `isMatched` is false. */
  readonly short: string
  /** In a sentence of its own. */
  readonly sentence: string
}

/** Gains smaller than this print as 0 dB. */
const NOTHING_DB = 0.05

/** Which side plays lower and by how much, and what that was measured from. */
export function matchedWords(
  matched: boolean,
  gains: MatchingGains | null,
  sides = { bypassed: 'without', processed: 'with' },
): MatchedWords {
  if (!matched) return { short: 'off', sentence: 'Not matched: each side plays at its own level.' }
  if (!gains) return { short: '…', sentence: 'Not measured yet.' }
  if (gains.measuredOver === 'nothing')
    return { short: 'not measurable', sentence: 'Too little sound to match the sides by.' }
  const lowered = loweredSide(gains)
  const over = `measured over the ${gains.measuredOver}`
  if (!lowered) return { short: '0 dB', sentence: `Both sides are equally loud already, ${over}.` }
  const db = inWords(-gains[`${lowered}Db`])
  return {
    short: `${sides[lowered]} −${db} dB`,
    sentence: `“${sides[lowered]}” plays ${db} dB lower, ${over}.`,
  }
}

/** The side that is turned down; null where neither is by as much as is printed. */
export function loweredSide({
  bypassedDb,
  processedDb,
}: Pick<MatchingGains, 'bypassedDb' | 'processedDb'>): 'bypassed' | 'processed' | null {
  if (processedDb < -NOTHING_DB) return 'processed'
  return bypassedDb < -NOTHING_DB ? 'bypassed' : null
}
