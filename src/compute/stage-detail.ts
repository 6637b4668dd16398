import type { AddedHarmonics, DetectorLevel, Measures, SibilantLevel } from '../core'

/** What there is to know of one stage alone, from the sound in front of it. */
export interface StageDetail {
  /** What its detector sees along the take; null for stages without one. */
  readonly level: DetectorLevel | null
  /** What it sees of each sibilant; null for stages that are not about them. */
  readonly sibilants: readonly SibilantLevel[] | null
  /** What it adds to a sine; null for stages that bend no waveform, and where there is no level to go by. */
  readonly harmonics: AddedHarmonics | null
  /** In front of it and behind it, as if it were on; null for stages that are not judged by that. */
  readonly levels: { readonly before: Measures; readonly after: Measures } | null
}
