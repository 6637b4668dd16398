import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { clippedRanges, levels } from '../../../../src/core/measure'
import { noise } from '../../../setup/signals'

const RATE = 48_000

/** A quiet second with runs of `value` from each of these frames on. */
function soundWith(
  runs: readonly { readonly at: number; readonly length: number; readonly value?: number }[],
) {
  const samples = new Float32Array(RATE).fill(0.1)
  for (const { at, length, value = 1 } of runs) samples.fill(value, at, at + length)
  return { sampleRate: RATE, channels: [samples] }
}

describe('clippedRanges', () => {
  it('names each place from its first clipped sample to behind its last, both rails, up to either end', () => {
    const sound = soundWith([
      { at: 0, length: 3 },
      { at: 20_000, length: 5, value: -1 },
      { at: RATE - 4, length: 4, value: 1.5 },
    ])
    expect(clippedRanges(sound)).toEqual([
      { from: 0, to: 3 },
      { from: 20_000, to: 20_005 },
      { from: RATE - 4, to: RATE },
    ])
  })

  it('leaves out peaks that touch the rail and move on, and runs below it', () => {
    expect(
      clippedRanges(
        soundWith([
          { at: 5000, length: 2 },
          { at: 9000, length: 50, value: 0.99 },
        ]),
      ),
    ).toEqual([])
    const rising = { sampleRate: RATE, channels: [Float32Array.of(0, 1.1, 1.2, 1.3, 1.2, 0)] }
    expect(clippedRanges(rising)).toEqual([])
  })

  it('joins runs of one note, and the channels of one moment', () => {
    const runs = Array.from({ length: 20 }, (_, k) => ({ at: 1000 + 240 * k, length: 4 }))
    const [left] = soundWith(runs).channels
    const [right] = soundWith([
      { at: 5600, length: 100 },
      { at: 30_000, length: 3 },
    ]).channels
    const sound = { sampleRate: RATE, channels: [left ?? new Float32Array(0), right ?? new Float32Array(0)] }
    expect(clippedRanges(sound)).toEqual([
      { from: 1000, to: 5700 },
      { from: 30_000, to: 30_003 },
    ])
  })

  it('counts as the levels do: there are places where there are clipped samples, and nothing lies outside them', () => {
    fc.assert(
      fc.property(fc.nat(), fc.double({ min: 0.5, max: 3, noNaN: true }), (seed, gain) => {
        const loud = noise(8000, 1, 2, seed, () => gain)
        const clipped = loud.channels.map((samples) => samples.map((x) => Math.min(1, Math.max(-1, x))))
        const sound = { sampleRate: 8000, channels: clipped }
        const ranges = clippedRanges(sound)
        expect(ranges.length > 0).toBe(levels(sound).clippedSamples > 0)
        const outside = clipped.map((samples) => {
          const rest = samples.slice()
          for (const { from, to } of ranges) rest.fill(0, from, to)
          return rest
        })
        expect(levels({ sampleRate: 8000, channels: outside }).clippedSamples).toBe(0)
      }),
      { numRuns: 30 },
    )
  })

  it('never lists more than a thousand, and still covers them all', () => {
    const samples = new Float32Array(20_000 * 500)
    for (let at = 0; at < samples.length; at += 5000) samples.fill(1, at, at + 3)
    const sound = { sampleRate: 48_000, channels: [samples] }
    const ranges = clippedRanges(sound)
    expect(ranges.length).toBeLessThanOrEqual(1000)
    expect(ranges.length).toBeGreaterThan(200)
    expect([ranges[0]?.from, ranges.at(-1)?.to]).toEqual([0, samples.length - 5000 + 3])
  })
})
