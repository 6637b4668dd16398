import { describe, expect, it } from 'vitest'
import { longTermSpectrum, type Spectrum } from '../../../src/core'
import { differenceSpectrum, spectrumLevelAt } from '../../../src/view/response/spectrum-level'
import { noise } from '../../setup/signals'

const spectrum: Spectrum = {
  frequenciesHz: Float64Array.of(100, 200, 400, 800),
  levelDb: Float64Array.of(-40, -20, Number.NaN, -30),
}

describe('the level of a spectrum at a frequency', () => {
  it('is that of its points, and between them goes by octaves', () => {
    expect(spectrumLevelAt(spectrum, 100)).toBe(-40)
    expect(spectrumLevelAt(spectrum, 200)).toBe(-20)
    expect(spectrumLevelAt(spectrum, 100 * Math.SQRT2)).toBeCloseTo(-30, 9)
  })

  it('is none where the spectrum has nothing, and beyond its ends', () => {
    for (const hz of [300, 400, 500, 50, 900]) expect(spectrumLevelAt(spectrum, hz)).toBeNull()
  })
})

describe('the difference spectrum', () => {
  it('is processed less bypassed at every frequency', () => {
    const sound = noise(48_000, 2, 1, 3, () => 0.1)
    const louder = { ...sound, channels: sound.channels.map((samples) => samples.map((x) => 2 * x)) }
    const { levelDb } = differenceSpectrum(longTermSpectrum(sound), longTermSpectrum(louder))
    // Twice the amplitude is 20 log10(2) = 6.02 dB.
    for (const db of levelDb) expect(db).toBeCloseTo(20 * Math.log10(2), 6)
  })

  it('has nothing where either side has nothing', () => {
    const flat = { ...spectrum, levelDb: spectrum.levelDb.map(() => -10) }
    expect([...differenceSpectrum(spectrum, flat).levelDb]).toEqual([30, 10, Number.NaN, 20])
    expect([...differenceSpectrum(flat, spectrum).levelDb]).toEqual([-30, -10, Number.NaN, -20])
  })
})
