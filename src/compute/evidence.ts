import type {
  ChainDoc,
  FrameRange,
  LoudnessOverTime,
  Measures,
  PeakPyramid,
  ReductionSummary,
  SibilantEvent,
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

/** What is shown about one side over a loop. */
export interface LoopSide {
  /** As if the loop had been cut out; noise floor and sibilance at the pauses and sibilants of the take in it. */
  readonly measures: Measures
  readonly spectrum: Spectrum
}

/** What is shown about a comparison over a loop. */
export interface LoopEvidence {
  readonly range: FrameRange
  readonly bypassed: LoopSide
  readonly processed: LoopSide
  /** By stage id, of the processed side: of stages that are on and reduce gain. */
  readonly reductions: ReadonlyMap<string, ReductionSummary>
  /** The chains this is evidence of. */
  readonly chains: Evidence['chains']
}

/** Places of a take that can be gone to. */
export interface TakeMarks {
  readonly sibilants: readonly SibilantEvent[]
  readonly clipped: readonly FrameRange[]
}
