import { plain } from '../../core'
import type { MatchingGains } from '../evidence-types'

/** What matching does just now, in two short lines. */
export interface MatchedWords {
  readonly gain: string
  readonly basis: string
}

/** Gains this small print as 0.0 dB. */
const NOTHING_DB = 0.05

/** Which side is turned down and by how much, and what that was measured from. */
export function matchedWords(
  matched: boolean,
  gains: MatchingGains | null,
  sides = { without: 'without', with: 'with' },
): MatchedWords {
  if (!matched) return { gain: 'off', basis: 'each side as loud as it comes' }
  if (!gains) return { gain: '…', basis: 'not measured yet' }
  if (gains.measuredOver === 'nothing') return { gain: 'not measurable', basis: 'too little sound' }
  const basis = gains.measuredOver === 'loop' ? 'over the loop alone' : 'over the whole take'
  if (gains.withDb < -NOTHING_DB) return { gain: `${sides.with} ${plain(gains.withDb, 1)} dB`, basis }
  if (gains.withoutDb < -NOTHING_DB)
    return { gain: `${sides.without} ${plain(gains.withoutDb, 1)} dB`, basis }
  return { gain: 'equally loud already', basis }
}
