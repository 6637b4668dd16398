/** Linear gain of a level in decibels: `10 ** (db / 20)`. */
export function dbToGain(db: number): number {
  return 10 ** (db / 20)
}

/** Level in decibels of a linear gain; -Infinity for 0, NaN below 0. */
export function gainToDb(gain: number): number {
  return 20 * Math.log10(gain)
}

/** Level in decibels of a power (mean square); -Infinity for 0, NaN below 0. */
export function powerToDb(power: number): number {
  return 10 * Math.log10(power)
}
