import type { Comparison } from '../../core'
import type { EvidenceState } from '../evidence-store'
import type { TakeState } from '../take/take-store'

/** Why no blind trial can be begun just now. */
export type TrialRefusal = 'no-take' | 'measuring' | 'no-figures' | 'same-sides' | 'not-measurable'

/** What each refusal means and what to do about it. */
export const refusalWords: Readonly<Record<TrialRefusal, string>> = {
  'no-take': 'There is no take yet. Open one, or the demo.',
  measuring: 'Both sides are still being measured. The trial can begin in a moment.',
  'no-figures': 'The sides could not be measured, so they cannot be matched. Change a setting to try again.',
  'same-sides':
    'Both sides are the same: what is compared is switched off, or no longer there. Switch it on, or compare something else.',
  'not-measurable':
    'The sides cannot be matched, because there is too little sound to measure their loudness by, and the louder one would give itself away. Choose a longer loop, or another take.',
}

/** Why a trial of `comparison` cannot be begun, or null where it can. */
export function trialRefusal(
  { take }: Pick<TakeState, 'take'>,
  { evidence, working, problem }: Pick<EvidenceState, 'evidence' | 'working' | 'problem'>,
  comparison: Comparison,
): TrialRefusal | null {
  if (!take) return 'no-take'
  if (sameText(comparison.bypassed, comparison.processed)) return 'same-sides'
  if (problem !== null) return 'no-figures'
  const upToDate =
    evidence !== null &&
    sameText(evidence.chains.bypassed, comparison.bypassed) &&
    sameText(evidence.chains.processed, comparison.processed)
  if (working !== null || !upToDate) return 'measuring'
  return evidence.matching.measuredOver === 'nothing' ? 'not-measurable' : null
}

function sameText(a: object, b: object): boolean {
  return JSON.stringify(a) === JSON.stringify(b)
}
