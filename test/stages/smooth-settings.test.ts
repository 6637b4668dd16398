import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { type StageDoc, stageKinds } from '../../src/core'
import { createProcessor } from '../../src/core/stages/create-processor'
import { band, equaliserWith } from '../setup/chains'
import { holds, movedSettings, SEED } from '../setup/random-chains'

const RATE = 48_000
const HOST = { sampleRate: RATE, channelCount: 1, lookaheadReserveMs: 10 }

/** Settings change here, long after the stage has settled on the sine and well before the end. */
const CHANGE = RATE / 2
const FRAMES = RATE

/**
 * Largest second difference: what a click, a break in the wave or in its slope, raises far above the curvature
 * of the wave itself.
 */
function sharpness(samples: Float32Array, from: number, to: number): number {
  let most = 0
  for (let n = from + 1; n < to - 1; n++) {
    const difference = (samples[n + 1] ?? 0) - 2 * (samples[n] ?? 0) + (samples[n - 1] ?? 0)
    most = Math.max(most, Math.abs(difference))
  }
  return most
}

/** How much sharper the output of a sine becomes by a change than its input and its output before and after are. */
function sharpening(before: StageDoc, after: StageDoc, frequencyHz: number): number {
  const input = Float32Array.from(
    { length: FRAMES },
    (_, n) => 0.25 * Math.sin((2 * Math.PI * frequencyHz * n) / RATE),
  )
  const changing = input.slice()
  const processor = createProcessor(before, HOST)
  processor.process([changing.subarray(0, CHANGE)], CHANGE)
  processor.set(after.settings)
  processor.process([changing.subarray(CHANGE)], FRAMES - CHANGE)
  const settled = input.slice()
  createProcessor(after, HOST).process([settled], FRAMES)
  const usual = Math.max(
    sharpness(input, 0, FRAMES),
    sharpness(changing, CHANGE / 2, CHANGE),
    sharpness(settled, FRAMES - RATE / 8, FRAMES),
  )
  return sharpness(changing, CHANGE - 2, FRAMES) / usual
}

/** An attack of less than 1 ms is meant to be sudden; what it does to a changed setting is no fault of the change. */
function unhurried(stage: StageDoc): StageDoc {
  if (stage.kind !== 'compressor' && stage.kind !== 'de-esser') return stage
  const attackMs = Math.max(1, stage.settings.attackMs)
  return stage.kind === 'compressor'
    ? { ...stage, settings: { ...stage.settings, attackMs } }
    : { ...stage, settings: { ...stage.settings, attackMs } }
}

describe(`set() while a sine sounds makes no step that the sine does not make (seed ${SEED})`, () => {
  it.each(stageKinds.filter((kind) => kind !== 'equaliser'))(
    '%s: any one setting moved anywhere, 1 kHz: no more than three times as sharp',
    (kind) => {
      holds(movedSettings(kind), 120, ({ before, after }) => {
        expect(sharpening(unhurried(before), unhurried(after), 1000)).toBeLessThan(3)
      })
    },
  )

  const bands = fc.record({
    shape: fc.constantFrom('high-pass', 'low-pass', 'bell', 'low-shelf', 'high-shelf', 'notch'),
    frequencyHz: fc.integer({ min: 30, max: 12_000 }),
    gainDb: fc.integer({ min: -12, max: 12 }),
    q: fc.constantFrom(0.5, 1, 2, 4, 8),
    slopeDbPerOctave: fc.constantFrom(6, 12, 24, 48),
  })
  it('equaliser: one setting of one of two bands moved anywhere, 1 kHz: no more than three times as sharp', () => {
    const key = fc.constantFrom('frequencyHz', 'gainDb', 'q', 'slopeDbPerOctave')
    const designs = fc.constantFrom('matched', 'bilinear')
    holds(fc.tuple(bands, bands, bands, key, designs), 120, ([first, second, other, moved, design]) => {
      const before = equaliserWith([band(first), band(second)], design)
      const after = equaliserWith([band({ ...first, [moved]: other[moved] }), band(second)], design)
      expect(sharpening(before, after, 1000)).toBeLessThan(3)
    })
  })

  it('equaliser: any band switched on or off, 300 Hz to 3 kHz: no more than twice as sharp', () => {
    holds(fc.tuple(bands, fc.constantFrom(300, 1000, 3000)), 120, ([settings, frequencyHz]) => {
      const off = equaliserWith([band({ ...settings, on: false })])
      const on = equaliserWith([band(settings)])
      expect(sharpening(on, off, frequencyHz)).toBeLessThan(2)
      expect(sharpening(off, on, frequencyHz)).toBeLessThan(2)
    })
  })

  it('would see a switch without a ramp: 6 dB at once is many times as sharp', () => {
    const samples = Float32Array.from(
      { length: 9600 },
      (_, n) => (n < 4812 ? 1 : 2) * Math.sin((2 * Math.PI * 1000 * n) / RATE),
    )
    expect(sharpness(samples, 0, 9600) / sharpness(samples, 5000, 9600)).toBeGreaterThan(3)
  })
})
