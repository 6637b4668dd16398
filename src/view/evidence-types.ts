import type { EvidenceState } from '../session/evidence-store'

/** All that is known about a comparison. */
export type Evidence = NonNullable<EvidenceState['evidence']>

/** The gain each side is given so that both are equally loud, dB. */
export type MatchingGains = Evidence['matching']
