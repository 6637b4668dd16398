import type { MatchingGains } from '../context/app-context'
import { inWords } from '../words/in-words'

/** What matching does right now, in two short lines. */
export interface MatchedWords {
  readonly gain: string
  readonly basis: string
}

/** Gains smaller than this print as 0 dB. */
const NOTHING_DB = 0.05

/** Which side plays lower and by how much, and what that was measured from. */
export function matchedWords(
  matched: boolean,
  gains: MatchingGains | null,
  sides = { bypassed: 'without', processed: 'with' },
): MatchedWords {
  if (!matched) return { gain: 'each side at its own level', basis: 'off' }
  if (!gains) return { gain: 'not measured yet', basis: '…' }
  if (gains.measuredOver === 'nothing') return { gain: 'too little sound', basis: 'not measurable' }
  const basis = gains.measuredOver === 'loop' ? 'over the loop' : 'over the take'
  if (gains.processedDb < -NOTHING_DB) return { gain: playsLower(sides.processed, gains.processedDb), basis }
  if (gains.bypassedDb < -NOTHING_DB) return { gain: playsLower(sides.bypassed, gains.bypassedDb), basis }
  return { gain: 'already equally loud', basis }
}

/** The same in one line, short enough for a narrow screen. */
export function matchedLine(matched: boolean, { gain }: MatchedWords): string {
  return `${matched ? 'matched' : 'not matched'}: ${gain}`
}

function playsLower(side: string, gainDb: number): string {
  return `“${side}” plays ${inWords(-gainDb)} dB lower`
}
