import { describe, expect, it } from 'vitest'
import { FadingReduction } from '../../../../src/core/dsp/dynamics/fading-reduction'

const RATE = 48_000
const FADE_FRAMES = 960
const LEVEL = 0.25
const SLOW = { ratio: 20, kneeDb: 0, attackMs: 200, releaseMs: 1000 }

/** What is held, dB, after each frame of a steady level. */
function held(reduction: FadingReduction<typeof SLOW & { thresholdDb: number }>, seconds: number): number[] {
  const values: number[] = []
  const [levels, reductions, earlier] = [
    new Float64Array(1).fill(LEVEL),
    new Float64Array(1),
    new Float64Array(1),
  ]
  for (let n = 0; n < seconds * RATE; n++) {
    reduction.run(levels, 1, reductions, earlier)
    reduction.fade.pass(1)
    values.push(reductions[0] ?? Number.NaN)
  }
  return values
}

/** What is held in the end at a threshold, with all the time it needs. */
function settled(thresholdDb: number): number {
  return held(new FadingReduction({ ...SLOW, thresholdDb }, RATE, FADE_FRAMES), 4).at(-1) ?? Number.NaN
}

describe('FadingReduction, going to other settings under a steady level', () => {
  it.each([
    [0, -80],
    [-80, -1],
    [-40, -20],
  ])(
    'holds at once what it will hold in the end: threshold from %d to %d dBFS, attack 200 ms',
    (from, to) => {
      const reduction = new FadingReduction({ ...SLOW, thresholdDb: from }, RATE, FADE_FRAMES)
      held(reduction, 2)
      reduction.set({ ...SLOW, thresholdDb: to })
      const wanted = settled(to)
      for (const value of held(reduction, 0.5)) expect(Math.abs(value - wanted)).toBeLessThan(0.01)
    },
  )

  it('a reduction still held from something louder stays, and is released as set', () => {
    const reduction = new FadingReduction({ ...SLOW, thresholdDb: -40 }, RATE, FADE_FRAMES)
    held(reduction, 2)
    const silent = new Float64Array(RATE)
    const reductions = new Float64Array(RATE)
    reduction.run(silent, RATE, reductions, reductions)
    const before = reductions.at(-1) ?? Number.NaN
    reduction.set({ ...SLOW, thresholdDb: -39 })
    reduction.run(silent, 1, reductions, new Float64Array(1))
    expect(before).toBeGreaterThan(5)
    expect(reductions[0]).toBeCloseTo(before, 3)
  })
})
