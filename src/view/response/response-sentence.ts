import { frequency, signedInSentence } from '../../core'

/** What a combined response looks like, in a sentence for those who cannot see it. */
export function responseSentence(frequenciesHz: Float64Array, magnitudesDb: Float64Array): string {
  const highest = extreme(magnitudesDb, (db, best) => db > best)
  const lowest = extreme(magnitudesDb, (db, best) => db < best)
  const at = (index: number) =>
    `${signedInSentence(magnitudesDb[index] ?? 0, 1)} dB at ${frequency(frequenciesHz[index] ?? 0)}`
  if ((magnitudesDb[highest] ?? 0) < FLAT_DB && (magnitudesDb[lowest] ?? 0) > -FLAT_DB)
    return 'Combined magnitude response: flat, 0 dB at every frequency.'
  return `Combined magnitude response from ${frequency(frequenciesHz[0] ?? 0)} to ${frequency(
    frequenciesHz.at(-1) ?? 0,
  )}: highest ${at(highest)}, lowest ${at(lowest)}.`
}

/** Less than this is nothing to speak of. */
const FLAT_DB = 0.05

function extreme(values: Float64Array, better: (value: number, best: number) => boolean): number {
  return values.reduce((best, value, i) => (better(value, values[best] ?? 0) ? i : best), 0)
}
