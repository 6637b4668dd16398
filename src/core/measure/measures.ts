import { durationSeconds, type Sound } from '../sound/sound'
import { finished, partOf, type Steps } from '../sound/steps'
import { type Levels, levelSteps } from './levels/levels'
import { noiseFloorSteps, type Pauses, pausesSteps } from './levels/noise-floor'
import { type Loudness, loudnessSteps } from './loudness/loudness'
import type { SibilantEvent } from './sibilance/sibilance'
import { sibilanceSteps } from './sibilance/sibilance-level'

/** What a sound measures. Null means not measurable: the sound is silent or too short for that measure. */
export interface Measures extends Loudness, Levels {
  /** True peak less integrated loudness. */
  readonly peakToLoudnessLu: number | null
  /** In the pauses of the take it was made from (see `noiseFloorDbfs`). */
  readonly noiseFloorDbfs: number | null
  /** Of the sibilants it was given, against the vowels next to them (see `sibilanceDb`); null without any. */
  readonly sibilanceDb: number | null
  readonly durationSeconds: number
}

/** What is known already of a sound that is to be measured. */
export interface MeasureKnown {
  /** K-weighted energies of its sub-blocks. */
  readonly energies?: Float64Array
  /** Pauses of the take that it was made from, in which its noise floor is measured; its own if not given. */
  readonly pauses?: Pauses | null
  /** Sibilants of the take that it was made from; none are looked for if not given. */
  readonly sibilants?: readonly SibilantEvent[]
}

/**
 * Loudness, peaks and levels of a whole sound. Changes nothing in it.
 *
 * @param sound 1 to 5 channels (L R C Ls Rs), 8 to 192 kHz, finite samples
 * @throws MeasureError `sample-rate` or `channels` outside those ranges
 */
export function measure(sound: Sound, known: MeasureKnown = {}): Measures {
  return finished(measureSteps(sound, known))
}

/** {@link measure} in steps. */
export function* measureSteps(
  sound: Sound,
  { energies, pauses, sibilants = [] }: MeasureKnown = {},
): Steps<Measures> {
  const loud = yield* partOf(loudnessSteps(sound, energies), 0, PARTS.loudness)
  const levels = yield* partOf(levelSteps(sound), PARTS.loudness, PARTS.levels)
  const quiet = pauses !== undefined ? pauses : yield* partOf(pausesSteps(sound), PARTS.levels, PARTS.pauses)
  const noiseFloorDbfs = yield* partOf(noiseFloorSteps(sound, quiet), PARTS.pauses, PARTS.noiseFloor)
  const sibilanceDb = yield* partOf(sibilanceSteps(sound, sibilants), PARTS.noiseFloor, 1)
  const { truePeakDbtp } = levels
  const { integratedLufs } = loud
  return {
    ...loud,
    ...levels,
    peakToLoudnessLu: truePeakDbtp === null || integratedLufs === null ? null : truePeakDbtp - integratedLufs,
    noiseFloorDbfs,
    sibilanceDb,
    durationSeconds: durationSeconds(sound),
  }
}

/** How the work is divided, roughly: the part done behind each measure. */
const PARTS = { loudness: 0.5, levels: 0.8, pauses: 0.9, noiseFloor: 0.92 }
