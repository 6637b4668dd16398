import { describe, expect, it } from 'vitest'
import { printNumber } from '../../../src/core'
import { spoken } from '../../../src/view/controls/spoken'
import { numberParameter } from './parameters'

describe('a number as it is said', () => {
  it.each([
    ['compressor thresholdDb', -19.3, 'minus 19.3 decibels full scale'],
    ['compressor ratio', 4, '4 to 1'],
    ['compressor ratio', Number.POSITIVE_INFINITY, 'infinity to 1'],
  ])('of %s, %d is “%s”', (name, value, said) => {
    expect(spoken(numberParameter(name), value)).toBe(said)
  })

  it('is written with a sign, not in words, where a ratio has no end', () => {
    expect(printNumber(numberParameter('compressor ratio'), Number.POSITIVE_INFINITY)).toBe('∞:1')
  })
})
