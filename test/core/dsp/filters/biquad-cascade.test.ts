import { describe, expect, it } from 'vitest'
import { BiquadCascade } from '../../../../src/core/dsp/filters/biquad-cascade'
import type { EqualiserSettings } from '../../../../src/core/stages/equaliser/band'
import { bandSections } from '../../../../src/core/stages/equaliser/band'
import { holds, stages } from '../../../setup/random-chains'
import { noise } from '../../../setup/signals'

const RATE = 48000
const RAMP_FRAMES = 720

/** Noise through the first band of an equaliser, its very sections set again on the way if `again`. */
function filtered({ bands, design }: EqualiserSettings, again: boolean): Float32Array {
  const sections = bands.slice(0, 1).flatMap((band) => bandSections({ ...band, on: true }, design, RATE))
  const cascade = new BiquadCascade(4, 1, RAMP_FRAMES)
  cascade.set(sections)
  const samples = Float32Array.from(noise(RATE, 0.2, 1, 5, () => 0.5).channels[0] ?? [])
  cascade.process([samples], 4000)
  if (again) cascade.set(sections)
  cascade.process([samples], samples.length - 4000, 4000)
  return samples
}

describe('BiquadCascade.set()', () => {
  it('to the sections it has carries the past into the moving form and back: below -120 dB of the sound', () => {
    holds(stages(['equaliser']), 300, ({ settings }) => {
      if (!('bands' in settings)) return
      const still = filtered(settings, false)
      const again = filtered(settings, true)
      const peak = still.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
      const error = still.reduce((most, value, n) => Math.max(most, Math.abs(value - (again[n] ?? 0))), 0)
      expect(error).toBeLessThanOrEqual(1e-6 * peak)
    })
  })
})
