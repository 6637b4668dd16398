import { plain } from '../../core'
import type { MatchingGains } from '../evidence-types'

/** Gains this small print as 0.0 dB. */
const NOTHING_DB = 0.05

/** By how much which side is turned down, and what that was measured from. */
export function matchedWords(matched: boolean, gains: MatchingGains | null): string {
  if (!matched) return 'as loud as each side comes'
  if (!gains) return 'not measured yet'
  if (gains.measuredOver === 'nothing') return 'not measurable: too little sound'
  const over = gains.measuredOver === 'loop' ? "the loop's loudness" : "the take's loudness"
  if (gains.withDb < -NOTHING_DB) return `with ${plain(gains.withDb, 1)} dB, from ${over}`
  if (gains.withoutDb < -NOTHING_DB) return `without ${plain(gains.withoutDb, 1)} dB, from ${over}`
  return `equally loud already, from ${over}`
}
