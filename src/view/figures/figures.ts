import { type Measures, plain, signed } from '../../core'
import { DIGITAL_SILENCE, isDigitalSilence } from '../words/missing-figures'

/** One row of the table, and the scale that it is drawn on. */
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
  /** Its name in full, where that is longer. */
  readonly long?: string
  readonly unit: string
  /** Unit of a difference of two of them. */
  readonly differenceUnit: 'LU' | 'dB'
  /** What its line shows, in its unit: as far as takes and what is made of them usually go. Chosen, no source. */
  readonly range: readonly [from: number, to: number]
  /** A value that the line marks. */
  readonly mark?: number
  /** Higher values clip. */
  readonly clipsAbove?: number
  /** A shorter sound has none, seconds (EBU Tech 3341 and 3342: windows of 400 ms and 3 s). */
  readonly shortestSeconds?: number
  /** Why a sound that is long enough may have none. */
  readonly none?: string
}

/** What the table shows, from loudness over peaks to sibilance and the floor. */
export const figures: readonly Figure[] = [
  {
    key: 'integratedLufs',
    label: 'Integrated',
    unit: 'LUFS',
    differenceUnit: 'LU',
    range: [-40, 0],
    shortestSeconds: 0.4,
  },
  {
    key: 'shortTermMaxLufs',
    label: 'Loudest 3 s',
    long: 'Short-term max',
    unit: 'LUFS',
    differenceUnit: 'LU',
    range: [-40, 0],
    shortestSeconds: 3,
  },
  {
    key: 'momentaryMaxLufs',
    label: 'Loudest 0.4 s',
    long: 'Momentary max',
    unit: 'LUFS',
    differenceUnit: 'LU',
    range: [-40, 0],
    shortestSeconds: 0.4,
  },
  {
    key: 'loudnessRangeLu',
    label: 'Loudness range',
    unit: 'LU',
    differenceUnit: 'LU',
    range: [0, 20],
    shortestSeconds: 3,
  },
  {
    key: 'truePeakDbtp',
    label: 'True peak',
    unit: 'dBTP',
    differenceUnit: 'dB',
    range: [-24, 6],
    mark: 0,
    clipsAbove: 0,
  },
  { key: 'crestFactorDb', label: 'Crest factor', unit: 'dB', differenceUnit: 'dB', range: [3, 27] },
  {
    key: 'sibilanceDb',
    label: 'Sibilance',
    long: 'Sibilance to vowels',
    unit: 'dB',
    differenceUnit: 'dB',
    range: [-30, 6],
    none: 'no sibilants found next to vowels',
  },
  {
    key: 'noiseFloorDbfs',
    label: 'Noise floor',
    unit: 'dBFS',
    differenceUnit: 'dB',
    range: [-96, -24],
    none: 'no pause',
  },
]

/** What the line of gain reduction shows, dB: from none to what only limiting does. */
export const REDUCTION_RANGE = [0, 24] as const

/** A figure as the table prints it. */
export interface PrintedFigure {
  readonly text: string
  /** In words, why there is no number; null where there is one. */
  readonly why: string | null
}

/** A figure of a sound so long, with one digit; where there is none, in a word that the table has room for. */
export function printFigure(value: number | null, figure: Figure, seconds: number): PrintedFigure {
  const { key, shortestSeconds = 0, none } = figure
  if (value !== null) {
    const isSilence = key === 'noiseFloorDbfs' && isDigitalSilence(value)
    return isSilence ? { text: 'silence', why: DIGITAL_SILENCE } : { text: plain(value, 1), why: null }
  }
  if (seconds < shortestSeconds)
    return { text: 'too short', why: `shorter than ${shortestSeconds} s, which this figure needs` }
  return none === undefined ? { text: 'silent', why: 'nothing to measure' } : { text: 'none', why: none }
}

/** Difference of two printed figures, so that the rows of the table add up. Null where either prints no number. */
export function printDifference(
  bypassed: number | null,
  processed: number | null,
  { key }: Pick<Figure, 'key'>,
): string | null {
  if (bypassed === null || processed === null) return null
  if (key === 'noiseFloorDbfs' && (isDigitalSilence(bypassed) || isDigitalSilence(processed))) return null
  return signed((tenths(processed) - tenths(bypassed)) / 10, 1)
}

/** Whether a figure is above what a file can hold, as it is printed. */
export function clips(value: number | null, { clipsAbove }: Figure): boolean {
  return value !== null && clipsAbove !== undefined && tenths(value) > clipsAbove * 10
}

/** Where on its line a value stands, 0 to 1; at the ends what lies beyond them. */
export function positionIn([from, to]: Figure['range'], value: number): number {
  return Math.min(1, Math.max(0, (value - from) / (to - from)))
}

/** As it is printed, in tenths. */
function tenths(value: number): number {
  return Math.round(Number(value.toFixed(1)) * 10)
}
