import type { MatchingGains } from '../context/app-context'
import { inWords } from '../words/in-words'

/** What matching does right now. */
export interface MatchedWords {
  /** The side that plays lower, as it is called; null for neither. */
  readonly side: string | null
  /** By how much, or why not. */
  readonly amount: string
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
  if (!matched)
    return { side: null, amount: 'off', sentence: 'Not matched: each side plays at its own level.' }
  if (!gains) return { side: null, amount: '…', sentence: 'Not measured yet.' }
  if (gains.measuredOver === 'nothing')
    return { side: null, amount: 'not measurable', sentence: 'Too little sound to match the sides by.' }
  const lowered = loweredSide(gains)
  const over = `measured over the ${gains.measuredOver}`
  if (!lowered)
    return { side: null, amount: '0 dB', sentence: `Both sides are equally loud already, ${over}.` }
  const db = inWords(-gains[`${lowered}Db`])
  return {
    side: sides[lowered],
    amount: `−${db} dB`,
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
