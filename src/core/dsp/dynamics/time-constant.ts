/**
 * One-pole coefficient of a time constant: after `timeMs` a step is covered to 1 - 1/e (63.2 %).
 * Source: D. Giannoulis, M. Massberg, J. D. Reiss, JAES 60(6), 2012: alpha = exp(-1 / (tau fs)).
 */
export function timeCoefficient(timeMs: number, sampleRate: number): number {
  return Math.exp(-1000 / (timeMs * sampleRate))
}

/** Frames in `timeMs`, rounded to the nearest whole frame. */
export function framesOf(timeMs: number, sampleRate: number): number {
  return Math.round((timeMs * sampleRate) / 1000)
}

/** How long a changed setting takes to arrive, ms: short to the hand, long enough to make no click. */
export const SETTING_FADE_MS = 20
