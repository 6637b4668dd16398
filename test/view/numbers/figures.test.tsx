import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  DIGITAL_SILENCE,
  NOT_MEASURABLE,
  printDifference,
  printFigure,
} from '../../../src/view/numbers/figures'

const level = fc.integer({ min: -9000, max: 2000 }).map((hundredths) => hundredths / 100)
const read = (text: string) => Number(text.replace('−', '-'))

describe('figures', () => {
  it('add up in every line as they are printed', () => {
    fc.assert(
      fc.property(level, level, (without, withSide) => {
        const sum = read(printFigure(without)) + read(printDifference(without, withSide) ?? '')
        expect(sum).toBeCloseTo(read(printFigure(withSide)), 9)
      }),
    )
  })

  it('carry a sign where they are differences', () => {
    expect(printDifference(-20, -18.5)).toBe('+1.5')
    expect(printDifference(-18.5, -20)).toBe('−1.5')
  })

  it('call a noise floor that no recording has digital silence, and take no difference from it', () => {
    // Outside source: the quantising noise of 24 bits, 6.02 dB a bit and 1.76 dB below a full-scale sine (W. R.
    // Bennett, "Spectra of Quantized Signals", 1948), lies at -146 dB.
    expect(printFigure(-172.3, 'noiseFloorDbfs')).toBe(DIGITAL_SILENCE)
    expect(printFigure(-130, 'noiseFloorDbfs')).toBe('−130.0')
    expect(printDifference(-48, -172.3, 'noiseFloorDbfs')).toBeNull()
    expect(printFigure(-172.3, 'truePeakDbtp')).toBe('−172.3')
  })

  it('say so where there is nothing to measure', () => {
    expect(printFigure(null)).toBe(NOT_MEASURABLE)
    expect(printDifference(null, -20)).toBeNull()
    expect(printDifference(-20, null)).toBeNull()
  })
})
