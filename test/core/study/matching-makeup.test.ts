import { describe, expect, it } from 'vitest'
import {
  chainOf,
  defaultStage,
  finished,
  integratedLoudness,
  integratedLoudnessSteps,
  makeupOf,
  matchingMakeupDb,
  matchingMakeupSteps,
  renderChain,
} from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { monoOf, stageWith } from '../../setup/chains'
import { sungDemo } from '../../setup/sung-demo'

const take = sungDemo().vocal

describe('matchingMakeupDb(sound, chain, id)', () => {
  it.each([1, 0.6, 0.2])('makes the output of the compressor as loud as its input, mix %s', (mix) => {
    const compressor = stageWith('compressor', { thresholdDb: -35, ratio: 8, mix })
    const chain = chainOf([...startingChain().stages.slice(0, 2), compressor])
    const makeupDb = matchingMakeupDb(take, chain, compressor.id)
    const made = { ...compressor, settings: { ...compressor.settings, makeupDb: makeupDb ?? 0 } }
    const before = integratedLoudness(renderChain(take, chainOf(chain.stages.slice(0, 2))).sound)
    const behind = integratedLoudness(renderChain(take, chainOf([...chain.stages.slice(0, 2), made])).sound)
    expect(makeupDb).toBeGreaterThan(1)
    expect(Math.abs((behind ?? 0) - (before ?? 99))).toBeLessThan(0.05)
  })

  it('hears what a linear-phase stage puts out ahead of an abrupt start, as renders do', () => {
    const burst = monoOf(48000, 24000, (n) => (n < 24 ? 0.9 : 0.001 * Math.sin(n / 7)))
    const saturator = stageWith('saturator', { driveDb: 0 })
    const compressor = stageWith('compressor', {
      thresholdDb: -40,
      ratio: 20,
      attackMs: 0.1,
      releaseMs: 1000,
    })
    const chain = chainOf([saturator, compressor])
    const makeupDb = matchingMakeupDb(burst, chain, compressor.id)
    const made = { ...compressor, settings: { ...compressor.settings, makeupDb: makeupDb ?? 0 } }
    const before = integratedLoudness(renderChain(burst, chainOf([saturator])).sound)
    const behind = integratedLoudness(renderChain(burst, chainOf([saturator, made])).sound)
    expect(Math.abs((behind ?? 0) - (before ?? 99))).toBeLessThan(0.01)
  })

  it('goes by the loudness it is told, and asks no more once it matches', () => {
    const compressor = stageWith('compressor', { mix: 1 })
    const asked: number[] = []
    const makeup = makeupOf(compressor)
    if (!makeup) throw new Error('a compressor has makeup gain')
    const steps = matchingMakeupSteps(makeup, {
      before: () => integratedLoudnessSteps(take),
      *behind({ settings }) {
        const makeupDb = 'makeupDb' in settings ? settings.makeupDb : Number.NaN
        asked.push(makeupDb)
        yield 1
        return (integratedLoudness(take) ?? 0) - 6 + makeupDb
      },
    })
    expect(finished(steps)).toBeCloseTo(6, 9)
    expect(asked).toHaveLength(2)
  })

  it('is null for silence, and for a mix of nothing', () => {
    const silence = monoOf(48000, 96000, () => 0)
    expect(matchingMakeupDb(silence, chainOf([defaultStage('compressor')]), 'compressor')).toBeNull()
    const dry = stageWith('compressor', { mix: 0 })
    expect(matchingMakeupDb(take, chainOf([dry]), dry.id)).toBeNull()
  })

  it('throws RangeError where there is no such compressor', () => {
    expect(() => matchingMakeupDb(take, startingChain(), 'clean-up')).toThrow(RangeError)
  })
})
