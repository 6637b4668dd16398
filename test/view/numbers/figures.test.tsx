import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measure } from '../../../src/core'
import { gapWords, printDifference, printFigure } from '../../../src/view/numbers/figures'
import { DIGITAL_SILENCE, NO_SIBILANTS, NOT_MEASURABLE } from '../../../src/view/words/missing-figures'
import { noise } from '../../setup/signals'

const level = fc.integer({ min: -9000, max: 2000 }).map((hundredths) => hundredths / 100)
const read = (text: string) => Number(text.replace('−', '-'))

describe('figures', () => {
  it('add up as they are printed: a change is the difference of the printed figures', () => {
    fc.assert(
      fc.property(level, level, (bypassed, processed) => {
        const change = read(printDifference(bypassed, processed) ?? '')
        expect(change).toBeCloseTo(read(printFigure(processed)) - read(printFigure(bypassed)), 9)
        expect(Math.abs(change - (processed - bypassed))).toBeLessThanOrEqual(0.1 + 1e-9)
      }),
    )
    // Integrated loudness of the demo without and with its starting chain.
    expect([printFigure(-19.842), printFigure(-20.081), printDifference(-19.842, -20.081)]).toEqual([
      '−19.8',
      '−20.1',
      '−0.3',
    ])
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

  it('do not call noise silent or too short: it has no sibilants next to vowels', () => {
    const measures = measure(noise(48_000, 5, 1, 1, () => 0.1))
    expect(printFigure(measures.sibilanceDb, 'sibilanceDb')).toBe(NO_SIBILANTS)
    expect(gapWords([measures, measures])).toBe('–: no sibilants found next to vowels.')
    const silent = measure({ sampleRate: 48_000, channels: [new Float32Array(480)] })
    expect(gapWords([measures, silent])).toBe(
      '–: silent or too short to measure; at sibilance: no sibilants found next to vowels.',
    )
    const sung = { ...measures, sibilanceDb: -8 }
    expect(gapWords([sung, sung])).toBeNull()
    expect(gapWords([sung, { ...sung, integratedLufs: null }])).toBe('–: silent or too short to measure.')
  })

  it('say so where there is nothing to measure', () => {
    expect(printFigure(null)).toBe(NOT_MEASURABLE)
    expect(printFigure(null, 'integratedLufs')).toBe(NOT_MEASURABLE)
    expect(printDifference(null, -20)).toBeNull()
    expect(printDifference(-20, null)).toBeNull()
  })
})
