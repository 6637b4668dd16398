import { describe, expect, it } from 'vitest'
import type { SettingsByKind } from '../../src/core'
import { saturationCurve } from '../../src/core/dsp/oversampling/saturation-curve'
import { fastTanh } from '../../src/core/dsp/oversampling/waveshaper'
import { channel, monoOf, stageWith, through } from '../setup/chains'
import { harmonicAmplitudes } from '../setup/fourier-series'
import { sineAmplitude } from '../setup/spectrum'

const RATE = 48_000

/** Levels of harmonics 1 to `count` in dB re the first, of a settled 1 kHz sine through a saturator. */
function measured(
  amplitude: number,
  count: number,
  settings: Partial<SettingsByKind['saturator']>,
): number[] {
  const tone = monoOf(RATE, 3 * RATE, (n) => amplitude * Math.sin((2 * Math.PI * 1000 * n) / RATE))
  const output = channel(through(tone, stageWith('saturator', settings)))
  // The last but one tenth of a second: settled, and clear of the end, where the filters read silence.
  return Array.from({ length: count }, (_, k) => {
    const at = sineAmplitude(output, 1000 * (k + 1), RATE, 2.8 * RATE, 2.9 * RATE)
    return 20 * Math.log10(at)
  })
}

const db = (amplitude: number) => 20 * Math.log10(amplitude)

describe('the curve', () => {
  it('has slope 1 at 0, whatever drive and bias: quiet sound passes at its level', () => {
    for (const drive of [1, 4, 63]) {
      for (const bias of [-1, 0, 0.5]) {
        expect(saturationCurve(0, drive, bias)).toBe(0)
        expect(saturationCurve(1e-7, drive, bias) / 1e-7).toBeCloseTo(1, 4)
      }
    }
  })

  it('is worked out with a hyperbolic tangent that is right to 1e-13', () => {
    for (let x = -25; x <= 25; x += 0.0137) expect(Math.abs(fastTanh(x) - Math.tanh(x))).toBeLessThan(1e-13)
  })
})

describe('harmonics of a sine', () => {
  // Fourier series of tanh(d sin t), integrated numerically: d, H1, then H3, H5 and H7 in dB re H1.
  const series: [number, number, number, number, number][] = [
    [0.25, Number.NaN, -45.8006, -89.995, Number.NaN],
    [0.5, 0.471142828, -34.1494, -66.6273, -98.9916],
    [1, 0.811675685, -23.5003, -45.091, -66.5362],
    [2, 1.117941837, -15.451, -28.2981, -40.876],
    [4, 1.23811225, -11.3147, -18.8256, -25.6978],
  ]
  it.each(series)(
    'of tanh(%d sin): odd ones at the levels of the series, to 0.1 dB, no even ones',
    (d, h1, h3, h5, h7) => {
      // Half full scale into a drive of 2 d, up to the largest drive; d = 0.25 into a drive of 1.
      const drive = Math.max(1, 2 * d)
      const levels = measured(d / drive, 7, { driveDb: 20 * Math.log10(drive), bias: 0 })
      const first = levels[0] ?? Number.NaN
      if (!Number.isNaN(h1)) expect(Math.abs(first - db(h1 / drive))).toBeLessThan(0.01)
      for (const [harmonic, expected] of [
        [3, h3],
        [5, h5],
        [7, h7],
      ] as const) {
        if (Number.isNaN(expected)) continue
        expect(Math.abs((levels[harmonic - 1] ?? 0) - first - expected), `H${harmonic}`).toBeLessThan(0.1)
      }
      for (const even of [2, 4, 6]) expect((levels[even - 1] ?? 0) - first).toBeLessThan(-110)
    },
  )

  const settings = [
    { driveDb: 0, bias: 0.3 },
    { driveDb: 6, bias: 0 },
    { driveDb: 6, bias: -0.7 },
    { driveDb: 18, bias: 1 },
    { driveDb: 36, bias: 0.5 },
  ]
  it.each(settings)(
    'drive $driveDb dB, bias $bias: 1 to 18, within 0.1 dB of the Fourier series of the curve',
    (changes) => {
      const drive = 10 ** (changes.driveDb / 20)
      // (tanh(g x + b) - tanh b) / (g (1 - tanh^2 b)), as the curve's docstring has it.
      const curve = (x: number) =>
        (Math.tanh(drive * x + changes.bias) - Math.tanh(changes.bias)) /
        (drive * (1 - Math.tanh(changes.bias) ** 2))
      const expected = harmonicAmplitudes(curve, 0.5, 18)
      const levels = measured(0.5, 18, changes)
      let compared = 0
      for (const [k, level] of levels.entries()) {
        const wanted = db(expected[k + 1] ?? 0)
        // 32-bit output: what lies below -110 dBFS is its rounding.
        if (wanted < -110) continue
        compared += 1
        expect(Math.abs(level - wanted), `H${k + 1} at ${wanted}`).toBeLessThan(0.1)
      }
      expect(compared).toBeGreaterThan(4)
    },
  )

  it('mix 0 is the input, delayed and given back in line, bit for bit', () => {
    const tone = monoOf(RATE, 4800, (n) => 0.7 * Math.sin((2 * Math.PI * 300 * n) / RATE))
    expect(through(tone, stageWith('saturator', { mix: 0, driveDb: 30 })).channels).toEqual(tone.channels)
  })
})

describe('direct current', () => {
  it('that a bias makes is taken out, to -80 dB once settled', () => {
    for (const bias of [-1, 0.4, 1]) {
      const tone = monoOf(RATE, 3 * RATE, (n) => 0.5 * Math.sin((2 * Math.PI * 1000 * n) / RATE))
      const output = channel(through(tone, stageWith('saturator', { bias, driveDb: 24 })))
      const settled = output.subarray(2.8 * RATE, 2.9 * RATE)
      const mean = settled.reduce((sum, x) => sum + x, 0) / settled.length
      expect(Math.abs(mean), `bias ${bias}`).toBeLessThan(1e-4)
    }
  })
})
