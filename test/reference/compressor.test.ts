import { describe, expect, it } from 'vitest'
import type { SettingsByKind } from '../../src/core'
import { ReductionEnvelope } from '../../src/core/dsp/dynamics/reduction-envelope'
import { channel, monoOf, stageWith, through } from '../setup/chains'
import { staticOutputDb } from '../setup/independent-compressor'

// D. Giannoulis, M. Massberg, J. D. Reiss, "Digital Dynamic Range Compressor Design: A Tutorial and Analysis",
// J. Audio Eng. Soc. 60(6), 2012, is the source of every number here unless another is named.

type Settings = SettingsByKind['compressor']

const RATE = 48_000
const dbToGain = (db: number) => 10 ** (db / 20)

/** Output level in dB of a steady level, once everything has settled. */
function settledDb(inputDb: number, settings: Partial<Settings>): number {
  const level = dbToGain(inputDb)
  const sound = monoOf(RATE, 4800, () => level)
  const steady = stageWith('compressor', { attackMs: 0.1, releaseMs: 20, ...settings })
  return 20 * Math.log10(channel(through(sound, steady)).at(-1) ?? 0)
}

/** Gain reduction in dB, frame by frame, of a level that steps from one value to the next. */
function reductionOnSteps(
  steps: readonly (readonly [levelDb: number, frames: number])[],
  settings: Partial<Settings>,
  sampleRate = RATE,
): Float64Array {
  const levels = steps.flatMap(([levelDb, frames]) => Array<number>(frames).fill(dbToGain(levelDb)))
  const sound = monoOf(sampleRate, levels.length, (n) => levels[n] ?? 0)
  const output = channel(through(sound, stageWith('compressor', settings)))
  const input = channel(sound)
  return Float64Array.from(output, (y, n) => -20 * Math.log10(y / (input[n] ?? 0)))
}

describe('static curve: gain computer with hard and quadratic knee', () => {
  const at = [-30, -29, -27, -26, -24, -22, -21, -20, -18, -12, -6, 0]
  // Output levels for threshold -24 dB, worked out from the equations: ratio, knee, then one per input level.
  const curves: [number, number, number[]][] = [
    [4, 0, [-30, -29, -27, -26, -24, -23.5, -23.25, -23, -22.5, -21, -19.5, -18]],
    [4, 6, [-30, -29, -27, -26.0625, -24.5625, -23.5625, -23.25, -23, -22.5, -21, -19.5, -18]],
    [4, 12, [-30, -29.03125, -27.28125, -26.5, -25.125, -24, -23.53125, -23.125, -22.5, -21, -19.5, -18]],
    [2, 10, [-30, -29, -27.1, -26.225, -24.625, -23.225, -22.6, -22.025, -21, -18, -15, -12]],
    [20, 6, [-30, -29, -27, -26.07917, -24.7125, -23.97917, -23.85, -23.8, -23.7, -23.4, -23.1, -22.8]],
    [Number.POSITIVE_INFINITY, 0, [-30, -29, -27, -26, -24, -24, -24, -24, -24, -24, -24, -24]],
  ]
  it.each(curves)(
    'ratio %d, knee %d dB: the levels of the equations, to 0.001 dB',
    (ratio, kneeDb, outputs) => {
      for (const [i, inputDb] of at.entries()) {
        const own = settledDb(inputDb, { thresholdDb: -24, ratio, kneeDb })
        expect(Math.abs(own - (outputs[i] ?? Number.NaN)), `${inputDb} dB`).toBeLessThan(0.001)
      }
    },
  )

  const settings = [
    { thresholdDb: -24, ratio: 4, kneeDb: 0 },
    { thresholdDb: -40, ratio: 1.5, kneeDb: 36 },
    { thresholdDb: -10, ratio: 8, kneeDb: 3 },
    { thresholdDb: -55, ratio: 20, kneeDb: 12 },
    { thresholdDb: -6, ratio: Number.POSITIVE_INFINITY, kneeDb: 6 },
  ]
  it.each(settings)('40 levels at $thresholdDb dB, ratio $ratio, knee $kneeDb, within 0.05 dB', (curve) => {
    for (let inputDb = -78; inputDb <= 0; inputDb += 2) {
      expect(Math.abs(settledDb(inputDb, curve) - staticOutputDb(inputDb, curve))).toBeLessThan(0.05)
    }
  })

  it.each(settings)(
    'sines, RMS read over 10 whole periods: $thresholdDb dB, ratio $ratio, knee $kneeDb',
    (curve) => {
      for (let peakDb = -60; peakDb <= 0; peakDb += 7.5) {
        const tone = monoOf(RATE, 9600, (n) => dbToGain(peakDb) * Math.sin((2 * Math.PI * 1000 * n) / RATE))
        const stage = stageWith('compressor', { ...curve, detector: 'rms', attackMs: 0.1, releaseMs: 20 })
        const highest = channel(through(tone, stage))
          .subarray(4800)
          .reduce((most, x) => Math.max(most, x), 0)
        const level = peakDb - 10 * Math.log10(2)
        const expected = peakDb + staticOutputDb(level, curve) - level
        expect(Math.abs(20 * Math.log10(highest) - expected), `${peakDb} dB`).toBeLessThan(0.05)
      }
    },
  )

  it('ratio infinity holds a steady level at the threshold, a sine within what the fastest attack leaves', () => {
    for (const inputDb of [-19, -12, -3, 0, 6]) {
      const limit = { thresholdDb: -20, ratio: Number.POSITIVE_INFINITY, kneeDb: 0 }
      expect(settledDb(inputDb, limit)).toBeCloseTo(-20, 4)
      const tone = monoOf(RATE, 48_000, (n) => dbToGain(inputDb) * Math.sin((2 * Math.PI * 200 * n) / RATE))
      const stage = stageWith('compressor', { ...limit, attackMs: 0.02, releaseMs: 2000 })
      const highest = channel(through(tone, stage))
        .subarray(24_000)
        .reduce((most, x) => Math.max(most, x), 0)
      expect(Math.abs(20 * Math.log10(highest) + 20)).toBeLessThan(0.05)
    }
  })
})

describe('time constants: a step is covered to 1 - 1/e in the time the control says', () => {
  it.each([8000, 44_100, 48_000, 96_000, 192_000])(
    'at %i Hz, attack and release within a fiftieth of the setting',
    (sampleRate) => {
      for (const attackMs of [0.02, 0.1, 1, 5, 30, 200]) {
        for (const releaseMs of [5, 50, 400]) {
          const attackFrames = Math.round(sampleRate * 0.0015 * attackMs) + 2
          const releaseFrames = Math.round(sampleRate * 0.0015 * releaseMs) + 2
          const reductions = reductionOnSteps(
            [
              [0, attackFrames],
              [-30, releaseFrames],
            ],
            { thresholdDb: -20, ratio: Number.POSITIVE_INFINITY, kneeDb: 0, attackMs, releaseMs },
            sampleRate,
          )
          // The exponential between two frames gives the time constant even where it is shorter than a frame.
          const timeMs = (distanceDb: (n: number) => number, from: number, to: number) =>
            (-(to - from) * 1000) / (sampleRate * Math.log(distanceDb(to) / distanceDb(from)))
          const attack = timeMs((n) => 20 - (reductions[n] ?? 0), 0, Math.max(1, attackFrames - 2))
          const release = timeMs(
            (n) => reductions[n] ?? 0,
            attackFrames,
            attackFrames + Math.max(1, releaseFrames - 2),
          )
          expect(Math.abs(attack / attackMs - 1), `attack ${attackMs} ms`).toBeLessThan(0.02)
          expect(Math.abs(release / releaseMs - 1), `release ${releaseMs} ms`).toBeLessThan(0.02)
          // And where a frame is short against it, by the definition itself.
          const oneTime = Math.round((attackMs * sampleRate) / 1000)
          if (oneTime > 100) expect((reductions[oneTime - 1] ?? 0) / 20).toBeCloseTo(1 - 1 / Math.E, 2)
        }
      }
    },
  )

  it('-40 to -6 dB and back at threshold -24, ratio 4, attack 10 ms, release 100 ms: the reductions worked out', () => {
    const reductions = reductionOnSteps(
      [
        [-40, 4800],
        [-6, 9600],
        [-40, 9600],
      ],
      { thresholdDb: -24, ratio: 4, kneeDb: 0, attackMs: 10, releaseMs: 100 },
    )
    const reductionAt = (from: number, ms: number) => reductions[from + ms * 48 - 1]
    expect(reductionAt(4800, 10)).toBeCloseTo(8.533628, 5)
    expect(reductionAt(4800, 20)).toBeCloseTo(11.672974, 5)
    expect(reductionAt(4800, 200)).toBeCloseTo(13.5, 5)
    expect(reductionAt(14_400, 100)).toBeCloseTo(4.966372, 5)
    expect(reductionAt(14_400, 200)).toBeCloseTo(1.827026, 5)
  })

  it('smooth branching detector, 1 to 0.25 at 10 kHz, 50 and 100 ms: the curve of the equation', () => {
    // Infinite ratio from a threshold of -20 dB: a level of -19 dB asks for 1 dB.
    const curve = { thresholdDb: -20, ratio: Number.POSITIVE_INFINITY, kneeDb: 0 }
    const levels = Float64Array.from({ length: 15_000 }, (_, n) => dbToGain(n < 10_000 ? -19 : -19.75))
    const reductions = new Float64Array(levels.length)
    const envelope = new ReductionEnvelope(10_000)
    envelope.take({ ...curve, attackMs: 50, releaseMs: 100 })
    envelope.run(levels, levels.length, reductions)
    expect(reductions[499]).toBeCloseTo(0.632120559, 8)
    const released = [500, 1000, 1500, 4000].map((frames) => reductions[10_000 + frames - 1])
    for (const [i, expected] of [0.704897994, 0.52590958, 0.41734762, 0.263736729].entries()) {
      expect(released[i]).toBeCloseTo(expected, 8)
    }
  })
})
