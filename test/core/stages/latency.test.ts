import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ChainProcessor, chainLatencyFrames, renderChain } from '../../../src/core'
import { createIdleProcessor, createProcessor } from '../../../src/core/stages/processors'
import { stageLatencyFrames } from '../../../src/core/stages/stage-facts'
import { chains, holds, SEED, sampleRates, sounds, stages } from '../../setup/random-chains'

const reserves = fc.option(fc.integer({ min: 0, max: 20 }), { nil: undefined })

describe(`the delay that a definition states (seed ${SEED})`, () => {
  it('is that of the processor and of the idle one', () => {
    holds(fc.tuple(stages(), sampleRates, reserves), 300, ([stage, sampleRate, maxLookaheadMs]) => {
      const host = { sampleRate, channelCount: 1, ...(maxLookaheadMs !== undefined && { maxLookaheadMs }) }
      const stated = stageLatencyFrames(stage, sampleRate, maxLookaheadMs)
      expect(createProcessor(stage, host).latencyFrames).toBe(stated)
      expect(createIdleProcessor(stage, host).latencyFrames).toBe(stated)
    })
  })

  it('adds up to that of a chain, rendered or streamed', () => {
    holds(fc.tuple(sounds({ min: 1, max: 200 }), chains()), 100, ([sound, chain]) => {
      const stated = chainLatencyFrames(chain, sound.sampleRate)
      expect(renderChain(sound, chain).latencyFrames).toBe(stated)
      const host = { sampleRate: sound.sampleRate, channelCount: sound.channels.length }
      expect(new ChainProcessor(chain, host).latencyFrames).toBe(stated)
    })
  })

  it('holds a reserve for lookahead, whatever lookahead is set', () => {
    holds(fc.tuple(chains(), chains(), sampleRates), 100, ([before, after, sampleRate]) => {
      const moved = {
        ...before,
        stages: before.stages.map((stage) => after.stages.find(({ kind }) => kind === stage.kind) ?? stage),
      }
      const frames = chainLatencyFrames(before, sampleRate, 10)
      expect(chainLatencyFrames(moved, sampleRate, 10)).toBe(frames)
    })
  })
})
