import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { printNumber } from '../../../src/core'
import { parseNumber } from '../../../src/view/controls/parse-number'
import { valueAt } from '../../../src/view/controls/positions'
import { numberParameter, numberParameters } from './parameters'

describe.each(numberParameters)('text of %s', (_, parameter) => {
  it('is understood as the value it was printed from', () => {
    fc.assert(
      fc.property(fc.double({ min: 0, max: 1, noNaN: true }), (position) => {
        const value = valueAt(parameter, position)
        const parsed = parseNumber(parameter, printNumber(parameter, value))
        expect(parsed.ok && parsed.value).toBeCloseTo(value, 10)
      }),
    )
  })

  it('is never taken for a value out of range, whatever it says', () => {
    const scraps = fc.constantFrom(
      '1',
      '9',
      '.',
      ',',
      '-',
      '−',
      ':',
      ' ',
      'k',
      'hz',
      'db',
      '%',
      'inf',
      'oct',
      '/',
    )
    const text = fc.oneof(
      fc.string(),
      fc.array(scraps, { maxLength: 8 }).map((parts) => parts.join('')),
    )
    fc.assert(
      fc.property(text, (typed) => {
        const parsed = parseNumber(parameter, typed)
        if (parsed.ok) {
          expect(parsed.value).toBeGreaterThanOrEqual(parameter.min)
          expect(parsed.value).toBeLessThanOrEqual(parameter.max)
        } else expect(parsed.message).not.toBe('')
      }),
    )
  })
})

describe('what people type', () => {
  it.each([
    ['band frequencyHz', '3k', 3000],
    ['band frequencyHz', '3.2 kHz', 3200],
    ['band frequencyHz', '320', 320],
    ['band frequencyHz', '3,2k', 3200],
    ['compressor thresholdDb', '-19,3', -19.3],
    ['compressor thresholdDb', '−19.3', -19.3],
    ['compressor thresholdDb', '-19.3 dBFS', -19.3],
    ['compressor ratio', '20:1', 20],
    ['compressor ratio', '1:20', 20],
    ['compressor ratio', '20 : 1', 20],
    ['compressor ratio', '4', 4],
    ['compressor ratio', 'inf', Number.POSITIVE_INFINITY],
    ['compressor ratio', '∞:1', Number.POSITIVE_INFINITY],
    ['compressor attackMs', '0.5 ms', 0.5],
    ['compressor attackMs', '500 µs', 0.5],
    ['compressor releaseMs', '.2 s', 200],
    ['compressor mix', '50 %', 0.5],
    ['compressor mix', '50', 0.5],
    ['compressor lookaheadMs', 'off', 0],
    ['band gainDb', '+3', 3],
  ])('%s: "%s" is %d', (name, text, value) => {
    const parsed = parseNumber(numberParameter(name), text)
    expect(parsed.ok && parsed.value).toBeCloseTo(value, 12)
  })

  // R. Bristow-Johnson, "Cookbook formulae for audio equalizer biquad filter coefficients": 1/Q = 2 sinh(ln(2)/2 N).
  it.each([
    ['1/2 oct', 1 / 2],
    ['1 octave', 1],
    ['0.3333333333 oct', 1 / 3],
    ['2 octaves', 2],
  ])('takes a Q as a bandwidth, %s', (text, octaves) => {
    const parsed = parseNumber(numberParameter('band q'), text)
    expect(parsed.ok && parsed.value).toBeCloseTo(1 / (2 * Math.sinh((Math.LN2 / 2) * octaves)), 8)
  })

  it.each([
    ['band frequencyHz', '3 dB'],
    ['band frequencyHz', '5'],
    ['band frequencyHz', ''],
    ['compressor ratio', '1:0'],
    ['compressor ratio', '0.5'],
    ['compressor thresholdDb', 'inf'],
    ['compressor mix', '120 %'],
    ['saturator bias', '1/2 oct'],
  ])('%s: "%s" is refused with the range that is allowed', (name, text) => {
    const parsed = parseNumber(numberParameter(name), text)
    expect(parsed.ok).toBe(false)
  })

  // Both readings are common practice, no source: a comma separates thousands in English, decimals in most of Europe.
  it.each([
    ['band frequencyHz', '12,000', '12,000 can mean 12000 Hz or 12 Hz. Type 12000 or 12.0.'],
    ['band frequencyHz', ' 1,000 hz', '1,000 hz can mean 1000 Hz or 1 Hz. Type 1000 or 1.0.'],
    ['band frequencyHz', '1,234', '1,234 can mean 1234 Hz or 1.234 Hz. Type 1234 or 1.234.'],
    ['compressor releaseMs', '1,500', '1,500 can mean 1500 ms or 1.5 ms. Type 1500 or 1.5.'],
    ['compressor attackMs', '1,500 µs', '1,500 µs can mean 1.5 ms or 0.0015 ms. Type 1.5 or 0.0015.'],
    ['compressor ratio', '1,000:1', '1,000:1 can mean 1000:1 or 1:1. Type 1000 or 1.0.'],
  ])('%s: "%s" is refused, for its comma can separate thousands or decimals', (name, text, message) => {
    expect(parseNumber(numberParameter(name), text)).toEqual({ ok: false, message })
  })

  it.each([
    ['band frequencyHz', '2,5k', 2500],
    ['band frequencyHz', '2,500k', 2500],
    ['band frequencyHz', '100,5', 100.5],
    ['band frequencyHz', '1000,125', 1000.125],
    ['compressor releaseMs', '1,500 s', 1500],
    ['compressor attackMs', '0,125', 0.125],
    ['compressor attackMs', '12,5', 12.5],
    ['compressor ratio', '1,5', 1.5],
    ['band q', '1,500', 1.5],
    ['compressor thresholdDb', '-19,300', -19.3],
  ])('%s: the comma of "%s" can only separate decimals', (name, text, value) => {
    expect(parseNumber(numberParameter(name), text)).toEqual({ ok: true, value })
  })

  it('says what is allowed', () => {
    expect(parseNumber(numberParameter('band gainDb'), 'loud')).toEqual({
      ok: false,
      message: 'Not understood. Type −24.0 dB to +24.0 dB.',
    })
    expect(parseNumber(numberParameter('compressor ratio'), '0.5')).toEqual({
      ok: false,
      message: 'Out of range. Type 1:1 and up, or inf.',
    })
  })
})
