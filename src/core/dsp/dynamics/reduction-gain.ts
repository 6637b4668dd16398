/**
 * The table: reductions up to 260 dB, more than the loudest sound that a chain lets through (+180 dBFS) can ask of the
 * lowest threshold; steps so close that a parabola between them is exact to 2e-10 (-190 dB).
 */
const STEPS_PER_DB = 64
const MOST_DB = 260
const LAST_STEP = MOST_DB * STEPS_PER_DB
const GAINS = Float64Array.from({ length: LAST_STEP + 1 }, (_, i) => 10 ** (-i / STEPS_PER_DB / 20))

const NEPERS_PER_DB = Math.LN10 / 20

/**
 * Writes `dry + wet * gain` to the first `count` of `mixed`, with the linear gain of each of `reductionsDb` (dB, 0 or
 * more): exactly 1 where no gain is reduced.
 */
export function mixGains(
  reductionsDb: Float64Array,
  count: number,
  dry: number,
  wet: number,
  mixed: Float64Array,
): void {
  // Held in a local: read from the module, it would be looked up anew in every frame.
  const gains = GAINS
  for (let n = 0; n < count; n++) {
    const reductionDb = Math.min(reductionsDb[n] ?? 0, MOST_DB)
    const step = (reductionDb * STEPS_PER_DB + 0.5) | 0
    const rest = (step / STEPS_PER_DB - reductionDb) * NEPERS_PER_DB
    mixed[n] = dry + wet * ((gains[step] ?? 1) * (1 + rest * (1 + rest * 0.5)))
  }
}
