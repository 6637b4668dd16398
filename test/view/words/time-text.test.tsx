import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { parseTime, printExactTime, printTime, speakTime } from '../../../src/view/words/time-text'

describe('printExactTime', () => {
  it.each([
    [0.25, '0:00.25'],
    [8.4, '0:08.4'],
    [8.401, '0:08.4'],
    [0.1 + 0.2, '0:00.3'],
    [59.999, '1:00.0'],
  ])('%d s is %s', (seconds, text) => {
    expect(printExactTime(seconds)).toBe(text)
  })
})

describe('printTime', () => {
  it.each([
    [0, '0:00.0'],
    [8.44, '0:08.4'],
    [59.96, '1:00.0'],
    [725, '12:05.0'],
    [3723.4, '1:02:03.4'],
    [3599.99, '1:00:00.0'],
  ])('%d s is %s', (seconds, text) => {
    expect(printTime(seconds)).toBe(text)
  })

  it('takes as many digits as asked for', () => {
    expect(printTime(75.126, 0)).toBe('1:15')
    expect(printTime(75.126, 2)).toBe('1:15.13')
  })
})

describe('parseTime', () => {
  it.each([
    ['8.4', 8.4],
    [' 8,4 s ', 8.4],
    ['1:08.4', 68.4],
    ['1:02:03', 3723],
    ['90', 90],
  ])('reads "%s"', (text, seconds) => {
    expect(parseTime(text)).toBeCloseTo(seconds, 9)
  })

  it.each(['', 'soon', '-3', '1:', ':5', '1:2:3:4', '3 min'])('does not take "%s" for a time', (text) => {
    expect(parseTime(text)).toBeNull()
  })

  it('reads back what was printed, to the digits that were printed', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20_000, noNaN: true }),
        fc.integer({ min: 0, max: 3 }),
        (seconds, digits) => {
          const read = parseTime(printTime(seconds, digits)) ?? Number.NaN
          expect(Math.abs(read - seconds)).toBeLessThanOrEqual(0.5 * 10 ** -digits + 1e-6)
        },
      ),
    )
  })
})

describe('speakTime', () => {
  it('says minutes only where there are some', () => {
    expect(speakTime(8.43)).toBe('8.4 seconds')
    expect(speakTime(60)).toBe('1 minute 0 seconds')
    expect(speakTime(119.97)).toBe('2 minutes 0 seconds')
  })

  it('has the singular for exactly one', () => {
    expect(speakTime(1)).toBe('1 second')
    expect(speakTime(61.04)).toBe('1 minute 1 second')
    expect(speakTime(1.1)).toBe('1.1 seconds')
  })
})
