import { powerToDb } from '../../sound/decibels'

/** Makes a 997 Hz sine at full scale in one front channel read -3.01 LUFS (ITU-R BS.1770-5, equation 2). */
const OFFSET_DB = -0.691
const ABSOLUTE_GATE_LUFS = -70

/** Loudness of a K-weighted mean power, LUFS; null for 0. ITU-R BS.1770-5, Annex 1, equation 2. */
export function powerToLufs(power: number): number | null {
  return power > 0 ? OFFSET_DB + powerToDb(power) : null
}

/** K-weighted mean power at the absolute gate of -70 LUFS. */
export const ABSOLUTE_GATE_POWER = 10 ** ((ABSOLUTE_GATE_LUFS - OFFSET_DB) / 10)

/**
 * Mean power of the blocks that pass both gates, or null if none does: first those above -70 LUFS, then, of
 * these, those above the loudness of the first lot less 10 LU. Both gates are strict.
 * ITU-R BS.1770-5, Annex 1, equations 3 to 7.
 *
 * @param blocks mean powers of the 400 ms gating blocks
 */
export function gatedPower(blocks: Float64Array): number | null {
  const ungated = meanAbove(blocks, ABSOLUTE_GATE_POWER)
  if (ungated === null) return null
  const relativeGate = ungated / 10
  return meanAbove(blocks, Math.max(relativeGate, ABSOLUTE_GATE_POWER))
}

function meanAbove(blocks: Float64Array, gate: number): number | null {
  let sum = 0
  let count = 0
  for (const power of blocks) {
    if (power > gate) {
      sum += power
      count++
    }
  }
  return count > 0 ? sum / count : null
}
