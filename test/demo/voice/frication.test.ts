import { describe, expect, it } from 'vitest'
import { frication } from '../../../src/demo/voice/frication'
import { noiseSpectrum, rmsOf } from '../analysis'

describe('frication', () => {
  // A. Jongman, R. Wayland, S. Wong, "Acoustic characteristics of English fricatives", JASA 108(3), 2000:
  // place, spectral peak (s: women), mean and variance. They are means over 20 speakers; 5 per cent for the
  // peak, 3 for the mean and 10 for the variance is what 4 s of noise let one measure.
  it.each([
    ['alveolar', 6800, 6133, 2.92],
    ['palatal', 3820, 4229, 3.38],
    ['labial', 7733, 5108, 6.37],
  ] as const)('of the %s place has the published spectrum', (place, peakHz, meanHz, varianceMhz) => {
    const noise = frication(place, 4 * 48_000, 5)
    const found = noiseSpectrum(noise, 48_000)
    expect(Math.abs(found.peakHz / peakHz - 1)).toBeLessThan(0.05)
    expect(Math.abs(found.meanHz / meanHz - 1)).toBeLessThan(0.03)
    expect(Math.abs(found.varianceMhz / varianceMhz - 1)).toBeLessThan(0.1)
    expect(rmsOf(noise, 48_000, 3 * 48_000)).toBeCloseTo(1, 6)
  })
})
