import type { Spectrum } from '../../core'

/** Level of a spectrum at a frequency, dB, between its points by the logarithm of frequency; null where it has none. */
export function spectrumLevelAt({ frequenciesHz, levelDb }: Spectrum, hz: number): number | null {
  const above = frequenciesHz.findIndex((each) => each >= hz)
  if (above < 0) return null
  const below = Math.max(0, above - 1)
  const [from = hz, to = hz] = [frequenciesHz[below], frequenciesHz[above]]
  if (above === 0 && to > hz) return null
  const share = to > from ? Math.log(hz / from) / Math.log(to / from) : 1
  const [low = Number.NaN, high = Number.NaN] = [levelDb[below], levelDb[above]]
  const level = low + share * (high - low)
  return Number.isFinite(level) ? level : null
}

/** `processed` less `bypassed`, dB, point by point; NaN where either has nothing. Both must have the same points. */
export function differenceSpectrum(bypassed: Spectrum, processed: Spectrum): Spectrum {
  return {
    frequenciesHz: processed.frequenciesHz,
    levelDb: processed.levelDb.map((db, i) => db - (bypassed.levelDb[i] ?? Number.NaN)),
  }
}
