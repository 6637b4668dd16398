import type {
  ChainDoc,
  LoudnessOverTime,
  Measures,
  PeakPyramid,
  ReductionSummary,
  Spectrum,
  Trace,
} from '../core'

/** Everything shown about one side of a comparison. */
export interface SideEvidence {
  readonly measures: Measures
  readonly loudness: LoudnessOverTime
  readonly peaks: PeakPyramid
  /** The average over the take: of all of it up to about a minute, of longer ones from segments spread evenly. */
  readonly spectrum: Spectrum
}

/** What one stage did on the way. */
export interface StageEvidence {
  /** Behind the stage, LUFS; null where not measurable. */
  readonly integratedLufs: number | null
  /** Integrated loudness behind the stage less that before it; null where not measurable. */
  readonly loudnessChangeLu: number | null
  /** Null for stages that do not reduce gain, or are off. */
  readonly reduction: ReductionSummary | null
  readonly trace: Trace | null
}

/** The gain each side is given so that both are equally loud, dB, 0 or less: the louder one is turned down. */
export interface MatchingGains {
  readonly bypassedDb: number
  readonly processedDb: number
  /** Measured over the loop, over the whole take, or not at all because there was too little sound. */
  readonly measuredOver: 'loop' | 'take' | 'nothing'
}

/** All that is shown about a comparison, put together from facts about both of its sides. */
export interface Evidence {
  readonly bypassed: SideEvidence
  readonly processed: SideEvidence
  /** By stage id, of the processed side. */
  readonly stages: ReadonlyMap<string, StageEvidence>
  readonly matching: MatchingGains
  /** The chains this is evidence of. */
  readonly chains: { readonly bypassed: ChainDoc; readonly processed: ChainDoc }
}
