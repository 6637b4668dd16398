import { frequency, plainInSentence } from '../number-format'
import { type BandSettings, usedBandSettings } from './band'

/** What one band does, as part of a sentence: "cuts 3 dB at 320 Hz"; null where it changes nothing. */
export function describeBand(band: BandSettings): string | null {
  if (!band.on || (usedBandSettings(band).gain && band.gainDb === 0)) return null
  const where = frequency(band.frequencyHz)
  const amount = `${plainInSentence(Math.abs(band.gainDb), 1)} dB`
  const verb = band.gainDb > 0 ? 'boosts' : 'cuts'
  switch (band.shape) {
    case 'high-pass':
      return `rolls off below ${where}`
    case 'low-pass':
      return `rolls off above ${where}`
    case 'notch':
      return `notches out ${where}`
    case 'bell':
      return `${verb} ${amount} at ${where}`
    case 'low-shelf':
      return `${verb} ${amount} below ${where}`
    case 'high-shelf':
      return `${verb} ${amount} above ${where}`
  }
}

/** One sentence for all bands: "Rolls off below 165 Hz, cuts 3 dB at 320 Hz". */
export function describeBands(bands: readonly BandSettings[]): string {
  const parts = bands.map(describeBand).filter((part) => part !== null)
  if (parts.length === 0) return 'Changes nothing'
  const sentence = parts.join(', ')
  return sentence.charAt(0).toUpperCase() + sentence.slice(1)
}
