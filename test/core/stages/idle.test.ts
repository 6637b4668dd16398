import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chainOf, idleChain, renderChain, stageDefinitions, stageKinds } from '../../../src/core'
import { createIdleProcessor, createProcessor } from '../../../src/core/stages/processors'
import { idleStage } from '../../../src/core/stages/stage-facts'
import { chains, holds, movedSettings, SEED, sounds } from '../../setup/random-chains'
import { largestDifference } from '../../setup/spectrum'

const filteringKinds = stageKinds.filter((kind) => stageDefinitions[kind].idleSettings !== null)
const shortSounds = sounds({ min: 1, max: 6000 })

describe(`a stage that finds nothing to do (seed ${SEED})`, () => {
  it('filters all the same where its kind says so: there is one such kind at least', () => {
    expect(filteringKinds.length).toBeGreaterThan(0)
  })

  it.each(filteringKinds)(
    '%s: the cheap idle processor gives what the full one gives, also while it is set',
    (kind) => {
      holds(
        fc.tuple(shortSounds, movedSettings(kind), fc.double({ min: 0, max: 1, noNaN: true })),
        60,
        (story) => {
          const [sound, { before, after }, share] = story
          const host = { sampleRate: sound.sampleRate, channelCount: sound.channels.length }
          const idle = createIdleProcessor(before, host)
          const full = createProcessor(idleStage(before), host)
          const [fromIdle, fromFull] = [idle, full].map(() =>
            sound.channels.map((samples) => samples.slice()),
          )
          if (!fromIdle || !fromFull) throw new Error('there are two of them')
          const frames = sound.channels[0]?.length ?? 0
          const half = Math.floor(share * frames)
          idle.process(fromIdle, half)
          full.process(fromFull, half)
          idle.set(after.settings)
          full.set(idleStage(after).settings)
          idle.process(
            fromIdle.map((samples) => samples.subarray(half)),
            frames - half,
          )
          full.process(
            fromFull.map((samples) => samples.subarray(half)),
            frames - half,
          )
          expect(largestDifference(fromIdle, fromFull)).toBe(0)
        },
      )
    },
  )

  it('leaves the take alone but for that filter, and reduces no gain', () => {
    holds(fc.tuple(shortSounds, chains()), 80, ([sound, chain]) => {
      const idle = idleChain(chain)
      const { sound: through, traces } = renderChain(sound, idle)
      for (const { gainDb } of traces.values()) expect(gainDb.every((gain) => gain === 0)).toBe(true)
      const kept = idle.stages.filter(({ kind }) => filteringKinds.includes(kind))
      const filtered = renderChain(sound, chainOf(kept)).sound.channels
      // What dies away is flushed at other frames where other stages delay it.
      expect(largestDifference(through.channels, filtered)).toBeLessThan(1e-18)
    })
  })
})
