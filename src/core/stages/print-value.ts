import { frequency, plain, ratioText, signed } from './number-format'
import type { NumberParameter, Parameter } from './parameter'

/** A parameter's value as text with its unit: "-19.0 dBFS", "4:1", "3.2 kHz", "matched to analogue", "off". */
export function printValue(parameter: Parameter, value: unknown): string {
  switch (parameter.type) {
    case 'number':
      return typeof value === 'number' ? printNumber(parameter, value) : ''
    case 'choice':
      return parameter.options.find((option) => option.value === value)?.label ?? ''
    case 'switch':
      return value ? 'on' : 'off'
    case 'list':
      return ''
  }
}

/** A number with its unit. Gains in dB carry their sign, levels in dBFS only a minus. */
export function printNumber(parameter: NumberParameter, value: number): string {
  const { unit, digits, min, minMeans, displayFactor = 1 } = parameter
  if (minMeans !== undefined && value === min) return minMeans
  switch (unit) {
    case 'Hz':
      return frequency(value)
    case 'ratio':
      return ratioText(value)
    case 'dB':
      return `${min < 0 ? signed(value, digits) : plain(value, digits)} dB`
    case '%':
      return `${plain(value * displayFactor, digits)} %`
    case '':
      return plain(value, digits)
    default:
      return `${plain(value * displayFactor, digits)} ${unit}`
  }
}
