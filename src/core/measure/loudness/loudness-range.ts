import { powerToDb } from '../../sound/decibels'
import { ABSOLUTE_GATE_POWER } from './gating'

/** 20 LU below the mean of what passed the absolute gate, as a ratio of powers. */
const RELATIVE_GATE = 0.01
const LOW_PERCENTILE = 10
const HIGH_PERCENTILE = 95

/**
 * Loudness range, LU, after EBU Tech 3342: the distance between the 10th and the 95th percentile of the
 * short-term loudness that passes an absolute gate of -70 LUFS and a relative one of -20 LU. Null when no
 * block passes, so also when the sound is shorter than 3 s.
 *
 * Only blocks wholly within the sound count. The 1.5 s of silence that Tech 3342 lets a file meter append
 * matters in short takes only, where it would add up to 1 LU of range that nobody sang.
 *
 * @param blocks mean powers of the 3 s blocks, one every 100 ms
 */
export function loudnessRange(blocks: Float64Array): number | null {
  const audible = blocks.filter((power) => power >= ABSOLUTE_GATE_POWER)
  const mean = audible.reduce((sum, power) => sum + power, 0) / audible.length
  const kept = audible.filter((power) => power >= mean * RELATIVE_GATE).sort()
  const low = percentile(kept, LOW_PERCENTILE)
  const high = percentile(kept, HIGH_PERCENTILE)
  return low === undefined || high === undefined ? null : powerToDb(high / low)
}

/** The nearest-rank percentile that the program printed in Tech 3342 uses; `sorted` ascends. */
function percentile(sorted: Float64Array, percent: number): number | undefined {
  return sorted[Math.round(((sorted.length - 1) * percent) / 100)]
}
