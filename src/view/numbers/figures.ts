import { type Measures, plain, signed } from '../../core'

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

/** What stands where a sound is silent or too short for a measure. */
export const NOT_MEASURABLE = 'not measurable'

/** What stands where a sound has no sibilants, or none that its vowels can be set against. */
export const NO_SIBILANTS = 'no sibilants found next to vowels'

/** What stands where a pause holds nothing at all. */
export const DIGITAL_SILENCE = 'digital silence'

/** Half the smallest step of 24 bits, dBFS: what lies lower is no room and no microphone, but what a filter left. */
const SILENT_BELOW_DBFS = -144

/** A noise floor in dBFS that no recording has: the pauses were muted. */
export function isDigitalSilence(noiseFloorDbfs: number | null): boolean {
  return noiseFloorDbfs !== null && noiseFloorDbfs < SILENT_BELOW_DBFS
}

/** A figure with one digit, or why there is none. */
export function printFigure(value: number | null, key?: Figure['key']): string {
  if (value === null) return key === 'sibilanceDb' ? NO_SIBILANTS : NOT_MEASURABLE
  return key === 'noiseFloorDbfs' && isDigitalSilence(value) ? DIGITAL_SILENCE : plain(value, 1)
}

/**
 * With less without, rounded once, as the gains and the changes of stages are: a tenth away from the difference of the
 * printed figures at times (see {@link addUp}). Null where either is not printed as a number.
 */
export function printDifference(
  bypassed: number | null,
  processed: number | null,
  key?: Figure['key'],
): string | null {
  if (bypassed === null || processed === null) return null
  if (key === 'noiseFloorDbfs' && (isDigitalSilence(bypassed) || isDigitalSilence(processed))) return null
  return signed(processed - bypassed, 1)
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

/** Whether the figures of every line add up as they are printed, each rounded by itself. */
export function addUp(bypassed: Measures, processed: Measures): boolean {
  return figures.every(({ key }) => {
    const [a, b] = [bypassed[key], processed[key]]
    if (a === null || b === null || printDifference(a, b, key) === null) return true
    return tenths(b) - tenths(a) === tenths(b - a)
  })
}

/** As it is printed, in tenths. */
function tenths(value: number): number {
  return Math.round(Number(value.toFixed(1)) * 10)
}
