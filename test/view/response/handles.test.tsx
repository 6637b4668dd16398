import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chainOf, defaultStage, type StageDoc } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { fittingRangeDb } from '../../../src/view/response/fitting-range'
import { type Handle, handlesOf, settingsAt } from '../../../src/view/response/handles'
import { frequencyTicks, plotOf } from '../../../src/view/response/plot'

const RATE = 48_000
const plot = plotOf(640, 300, 12, RATE)

function withBand(band: object): StageDoc<'equaliser'> {
  const stage = defaultStage('equaliser')
  return {
    ...stage,
    settings: { ...stage.settings, bands: stage.settings.bands.map((b) => ({ ...b, ...band })) },
  }
}

const handleOf = (band: object): Handle | undefined => handlesOf(chainOf([withBand(band)]), plot, RATE)[0]

describe('handles', () => {
  it('stand for every band of every equaliser, with the place of its stage', () => {
    const handles = handlesOf(startingChain(), plot, RATE)
    expect(handles.map(({ label }) => label)).toEqual(['1a', '1b', '2a', '2b'])
    expect(handles[2]?.name).toBe('2 Equaliser, band a')
    expect(new Set(handles.map(({ key }) => key)).size).toBe(4)
  })

  it('stand at their frequency and gain, and are found there again', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 20, max: 999 }),
        fc.integer({ min: -110, max: 110 }),
        (frequencyHz, tenths) => {
          const handle = handleOf({ frequencyHz, gainDb: tenths / 10 })
          if (!handle) throw new RangeError('a band has a handle')
          expect(settingsAt(plot, handle, handle.left, handle.top)).toEqual({
            frequencyHz,
            gainDb: tenths / 10,
          })
        },
      ),
    )
  })

  it('keep within the plot, whatever is set or wherever they are dragged', () => {
    const handle = handleOf({ frequencyHz: 24_000, gainDb: 24 })
    expect(handle?.left).toBe(plot.x.range()[1])
    expect(handle?.top).toBe(plot.y.range()[1])
    expect(settingsAt(plot, { hasGain: true }, -500, 5000)).toEqual({ frequencyHz: 20, gainDb: -12 })
  })

  // A second-order Butterworth pass is 3 dB down at its corner, 10 log10(1/2): S. Butterworth, "On the Theory of
  // Filter Amplifiers", Experimental Wireless, 1930.
  it('of a pass stands at what it does at its corner, and has no gain to drag', () => {
    const handle = handleOf({ shape: 'high-pass', frequencyHz: 200, q: Math.SQRT1_2, gainDb: 9 })
    expect(plot.y.invert(handle?.top ?? 0)).toBeCloseTo(10 * Math.log10(0.5), 2)
    expect(handle?.hasGain).toBe(false)
    expect(settingsAt(plot, { hasGain: false }, plot.x(300), 0)).toEqual({ frequencyHz: 300 })
  })

  it('are off where their band or their stage is', () => {
    expect(handleOf({ on: false })?.on).toBe(false)
    const off = handlesOf(chainOf([{ ...withBand({}), on: false }]), plot, RATE)
    expect(off[0]?.on).toBe(false)
  })
})

describe('the plot', () => {
  it('ends below half of a low sample rate', () => {
    const low = plotOf(640, 300, 12, 8000)
    expect(low.x.domain()[1]).toBeLessThan(4000)
    expect(low.frequenciesHz.at(-1)).toBeLessThan(4000)
    expect(frequencyTicks(low).at(-1)?.label).toBe('2k')
  })

  it('has a scale on which every gain can be seen', () => {
    expect(fittingRangeDb(startingChain())).toBe(12)
    expect(fittingRangeDb(chainOf([withBand({ gainDb: 15 })]))).toBe(18)
    expect(fittingRangeDb(chainOf([withBand({ gainDb: -20 })]))).toBe(24)
  })

  it('keeps every gain that can be set off its edge', () => {
    fc.assert(
      fc.property(fc.integer({ min: -24, max: 24 }), (gainDb) => {
        const rangeDb = fittingRangeDb(chainOf([withBand({ gainDb })]))
        expect(rangeDb - Math.abs(gainDb)).toBeGreaterThanOrEqual(2)
      }),
    )
  })
})
