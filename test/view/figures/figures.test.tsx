import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { measure } from '../../../src/core'
import {
  clips,
  type Figure,
  figures,
  positionIn,
  printDifference,
  printFigure,
} from '../../../src/view/figures/figures'
import { noise } from '../../setup/signals'

const level = fc.integer({ min: -9000, max: 2000 }).map((hundredths) => hundredths / 100)
const read = (text: string) => Number(text.replace('−', '-'))
const LONG_SECONDS = 60

function figure(key: Figure['key']): Figure {
  const found = figures.find((each) => each.key === key)
  if (!found) throw new RangeError(`no figure ${key}`)
  return found
}
const integrated = figure('integratedLufs')
const floor = figure('noiseFloorDbfs')
const textOf = (value: number | null, of = integrated) => printFigure(value, of, LONG_SECONDS).text

describe('figures', () => {
  it('add up as they are printed: a change is the difference of the printed figures', () => {
    fc.assert(
      fc.property(level, level, (bypassed, processed) => {
        const change = read(printDifference(bypassed, processed, integrated) ?? '')
        expect(change).toBeCloseTo(read(textOf(processed)) - read(textOf(bypassed)), 9)
        expect(Math.abs(change - (processed - bypassed))).toBeLessThanOrEqual(0.1 + 1e-9)
      }),
    )
    expect([textOf(-19.842), textOf(-20.081), printDifference(-19.842, -20.081, integrated)]).toEqual([
      '−19.8',
      '−20.1',
      '−0.3',
    ])
  })

  it('carry a sign where they are differences', () => {
    expect(printDifference(-20, -18.5, integrated)).toBe('+1.5')
    expect(printDifference(-18.5, -20, integrated)).toBe('−1.5')
  })

  it('call a noise floor that no recording has digital silence, and take no difference from it', () => {
    // Outside source: the quantising noise of 24 bits, 6.02 dB a bit and 1.76 dB below a full-scale sine (W. R.
    // Bennett, "Spectra of Quantized Signals", 1948), lies at -146 dB.
    expect(printFigure(-172.3, floor, LONG_SECONDS)).toEqual({ text: 'silence', why: 'digital silence' })
    expect(textOf(-130, floor)).toBe('−130.0')
    expect(printDifference(-48, -172.3, floor)).toBeNull()
    expect(textOf(-172.3, figure('truePeakDbtp'))).toBe('−172.3')
  })

  it('say why there is none: too short, silent, or nothing of the kind in it', () => {
    const short = measure(noise(48_000, 1, 1, 3, () => 0.1))
    const rows = (of: typeof short) =>
      Object.fromEntries(
        figures.map((each) => [each.key, printFigure(of[each.key], each, of.durationSeconds)]),
      )
    expect(rows(short)).toMatchObject({
      integratedLufs: { why: null },
      shortTermMaxLufs: { text: 'too short', why: 'shorter than 3 s, which this figure needs' },
      loudnessRangeLu: { text: 'too short' },
      sibilanceDb: { text: 'none', why: 'no sibilants found next to vowels' },
    })
    const silent = measure({ sampleRate: 48_000, channels: [new Float32Array(4 * 48_000)] })
    expect(rows(silent)).toMatchObject({
      integratedLufs: { text: 'silent' },
      shortTermMaxLufs: { text: 'silent' },
      truePeakDbtp: { text: 'silent' },
      noiseFloorDbfs: { text: 'none', why: 'no pause' },
    })
    expect(printDifference(null, -20, integrated)).toBeNull()
    expect(printDifference(-20, null, integrated)).toBeNull()
  })

  it('have a line on which both sides always stand', () => {
    const any = fc.double({ min: -400, max: 100, noNaN: true })
    fc.assert(
      fc.property(fc.constantFrom(...figures), any, any, ({ range }, a, b) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)]
        expect(positionIn(range, low)).toBeGreaterThanOrEqual(0)
        expect(positionIn(range, high)).toBeLessThanOrEqual(1)
        expect(positionIn(range, low)).toBeLessThanOrEqual(positionIn(range, high))
      }),
    )
    for (const { range } of figures)
      expect([positionIn(range, range[0]), positionIn(range, range[1])]).toEqual([0, 1])
  })

  it('clip above 0 dBTP as printed, where they are true peaks', () => {
    const truePeak = figure('truePeakDbtp')
    expect([0.04, 0, -0.1, null].map((value) => clips(value, truePeak))).toEqual([false, false, false, false])
    expect([0.06, 3].map((value) => clips(value, truePeak))).toEqual([true, true])
    expect(clips(3, figure('crestFactorDb'))).toBe(false)
  })
})
