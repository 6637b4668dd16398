import { expect } from 'vitest'
import type { Stretch } from '../../setup/signals'

/** Fails unless `value` is a number within `tolerance` of `expected`. */
export function within(value: number | null, expected: number, tolerance: number): void {
  expect(value).not.toBeNull()
  expect(Math.abs((value ?? Number.NaN) - expected), `${value} for ${expected}`).toBeLessThanOrEqual(
    tolerance,
  )
}

/** Gain of the K-weighting at 1 kHz less its gain at 997 Hz, from the tables of ITU-R BS.1770-5, dB. */
const GAIN_AT_1_KHZ_DB = 0.0067

/**
 * Integrated loudness of a stereo 1 kHz tone in stretches of whole tenths of a second, worked out from the
 * stated levels by equations 3 to 7 of ITU-R BS.1770-5, Annex 1, without any samples; a gate can be left out
 * or moved to see what a faulty meter would read.
 */
export function gatedLufs(
  stretches: readonly Stretch[],
  { absolute = true, relativeLu = 10 }: { absolute?: boolean; relativeLu?: number } = {},
): number {
  const tenths = stretches.flatMap(([seconds, peakDbfs]): number[] =>
    Array(Math.round(seconds * 10)).fill(peakDbfs === null ? 0 : 10 ** ((peakDbfs + GAIN_AT_1_KHZ_DB) / 10)),
  )
  const blocks = tenths.slice(3).map((_, i) => mean(tenths.slice(i, i + 4)))
  const lufs = (power: number) => 10 * Math.log10(power)
  const audible = absolute ? blocks.filter((power) => lufs(power) > -70) : blocks
  const gate = lufs(mean(audible)) - relativeLu
  return lufs(mean(audible.filter((power) => lufs(power) > gate)))
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
