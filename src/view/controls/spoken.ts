import { type NumberParameter, printNumber } from '../../core'

/** From the longer to the shorter, so that no unit is taken for the end of another. */
const WORDS: readonly (readonly [written: string, said: string])[] = [
  ['\u2212', 'minus '],
  ['+', 'plus '],
  ['kHz', 'kilohertz'],
  ['Hz', 'hertz'],
  ['dBFS', 'decibels full scale'],
  ['dB', 'decibels'],
  ['ms', 'milliseconds'],
  ['%', 'percent'],
  ['∞', 'infinity'],
  [':1', ' to 1'],
]

/** A number as a screen reader should say it: "minus 19.3 decibels full scale", "4 to 1". */
export function spoken(parameter: NumberParameter, value: number): string {
  return WORDS.reduce((text, [written, said]) => text.replace(written, said), printNumber(parameter, value))
}
