import { type ChainDoc, type Measures, sameSound } from '../core'
import type { EvidenceState } from './evidence-store'

/**
 * What the take through the whole of `chain` measures, as it would be delivered; null while that is not worked out, or
 * where neither of the sides that are compared is that chain.
 */
export function deliveredMeasures(evidence: EvidenceState['evidence'], chain: ChainDoc): Measures | null {
  if (!evidence) return null
  if (sameSound(evidence.chains.processed, chain)) return evidence.processed.measures
  return sameSound(evidence.chains.bypassed, chain) ? evidence.bypassed.measures : null
}
