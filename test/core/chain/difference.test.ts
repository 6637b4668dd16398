import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chainOf, renderChain, renderDifference } from '../../../src/core'
import { createIdleProcessor } from '../../../src/core/stages/processors'
import { stageWith } from '../../setup/chains'
import { holds, SEED, sounds, stages } from '../../setup/random-chains'
import { noise } from '../../setup/signals'
import { largestDifference } from '../../setup/spectrum'

const shortSounds = sounds({ min: 1, max: 2000 })

describe(`only what a stage takes away (seed ${SEED})`, () => {
  it('is digital silence where the stage is off or finds nothing to do', () => {
    const quiet = noise(48_000, 0.1, 2, 1, () => 0.01)
    for (const idle of [
      stageWith('equaliser', { bands: [] }),
      stageWith('compressor', { thresholdDb: 0, kneeDb: 0, lookaheadMs: 5 }),
      stageWith('de-esser', { thresholdDb: 0 }),
      stageWith('de-esser', { thresholdDb: 0, band: 'all' }),
      stageWith('saturator', { mix: 0 }),
      stageWith('gain', { gainDb: 0 }),
    ]) {
      const difference = renderDifference(quiet, chainOf([idle]), idle.id)
      expect(
        difference.channels.every((samples) => samples.every((x) => x === 0)),
        idle.kind,
      ).toBe(true)
    }
    holds(fc.tuple(shortSounds, stages()), 40, ([sound, stage]) => {
      const difference = renderDifference(sound, chainOf([{ ...stage, on: false }]), stage.id)
      expect(difference.channels.every((samples) => samples.every((x) => x === 0))).toBe(true)
    })
  })

  it('and what it lets through add up to the sound before it, as the stage passes that when idle', () => {
    holds(fc.tuple(shortSounds, stages()), 60, ([sound, stage]) => {
      const chain = chainOf([stage])
      const difference = renderDifference(sound, chain, stage.id).channels
      const through = renderChain(sound, chain).sound.channels
      const reference = createIdleProcessor(stage, {
        sampleRate: sound.sampleRate,
        channelCount: through.length,
      })
      const frames = (through[0]?.length ?? 0) + reference.latencyFrames
      const passed = sound.channels.map((samples) => {
        const padded = new Float32Array(frames)
        padded.set(samples)
        return padded
      })
      reference.process(passed, frames)
      const sums = through.map((samples, c) => samples.map((x, n) => x + (difference[c]?.[n] ?? 0)))
      const expected = passed.map((samples) => samples.subarray(reference.latencyFrames))
      const loudest = Math.max(
        ...through.map((samples) => samples.reduce((m, x) => Math.max(m, Math.abs(x)), 1)),
      )
      expect(largestDifference(sums, expected)).toBeLessThanOrEqual(1e-6 * loudest)
    })
  })

  it('of a stage that the chain does not have is an error', () => {
    expect(() =>
      renderDifference(
        noise(48_000, 0.01, 1, 1, () => 1),
        chainOf([]),
        'nowhere',
      ),
    ).toThrow(RangeError)
  })
})
