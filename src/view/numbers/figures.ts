import { type Measures, plain, signed } from '../../core'
import { DIGITAL_SILENCE, isDigitalSilence, NO_SIBILANTS, NOT_MEASURABLE } from '../words/missing-figures'

/** One line of the table. */
export interface Figure {
  readonly key: keyof Pick<
    Measures,
    | 'integratedLufs'
    | 'shortTermMaxLufs'
    | 'momentaryMaxLufs'
    | 'loudnessRangeLu'
    | 'truePeakDbtp'
    | 'crestFactorDb'
    | 'sibilanceDb'
    | 'noiseFloorDbfs'
  >
  readonly label: string
  readonly unit: string
  /** Unit of a difference of two of them. */
  readonly differenceUnit: 'LU' | 'dB'
}

/** What the table shows, from loudness over peaks to sibilance and the floor. */
export const figures: readonly Figure[] = [
  { key: 'integratedLufs', label: 'Integrated', unit: 'LUFS', differenceUnit: 'LU' },
  { key: 'shortTermMaxLufs', label: 'Short-term max', unit: 'LUFS', differenceUnit: 'LU' },
  { key: 'momentaryMaxLufs', label: 'Momentary max', unit: 'LUFS', differenceUnit: 'LU' },
  { key: 'loudnessRangeLu', label: 'Loudness range', unit: 'LU', differenceUnit: 'LU' },
  { key: 'truePeakDbtp', label: 'True peak', unit: 'dBTP', differenceUnit: 'dB' },
  { key: 'crestFactorDb', label: 'Crest factor', unit: 'dB', differenceUnit: 'dB' },
  { key: 'sibilanceDb', label: 'Sibilance to vowels', unit: 'dB', differenceUnit: 'dB' },
  { key: 'noiseFloorDbfs', label: 'Noise floor', unit: 'dBFS', differenceUnit: 'dB' },
]

/** A figure with one digit, or why there is none. */
export function printFigure(value: number | null, key?: Figure['key']): string {
  if (value === null) return key === 'sibilanceDb' ? NO_SIBILANTS : NOT_MEASURABLE
  return key === 'noiseFloorDbfs' && isDigitalSilence(value) ? DIGITAL_SILENCE : plain(value, 1)
}

/** Difference of two printed figures, so that the lines of the table add up. Null where either prints no number. */
export function printDifference(
  bypassed: number | null,
  processed: number | null,
  key?: Figure['key'],
): string | null {
  if (bypassed === null || processed === null) return null
  if (key === 'noiseFloorDbfs' && (isDigitalSilence(bypassed) || isDigitalSilence(processed))) return null
  return signed((tenths(processed) - tenths(bypassed)) / 10, 1)
}

/** What the dashes of the table mean; null where it has none. */
export function gapWords(sides: readonly Measures[]): string | null {
  const isGap = ({ key }: Figure) => sides.some((measures) => measures[key] === null)
  const gaps = figures.filter(isGap)
  const others = gaps.filter(({ key }) => key !== 'sibilanceDb')
  if (gaps.length === 0) return null
  if (others.length === 0) return `–: ${NO_SIBILANTS}.`
  const none = gaps.length > others.length ? `; at sibilance: ${NO_SIBILANTS}` : ''
  return `–: silent or too short to measure${none}.`
}

/** As it is printed, in tenths. */
function tenths(value: number): number {
  return Math.round(Number(value.toFixed(1)) * 10)
}
