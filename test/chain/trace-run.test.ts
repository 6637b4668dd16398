import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frameCount, renderChain, stageDefinitions, TRACE_HOP_FRAMES, TraceRun } from '../../src/core'
import { chains, holds, SEED, sounds } from '../setup/random-chains'

describe(`gains worked out without the sound (seed ${SEED})`, () => {
  it('are those of a render, to the bit, in whatever pieces they are asked for', () => {
    const asked = fc.tuple(sounds({ min: 1, max: 9000 }), chains(), fc.array(fc.nat(9000)))
    let compared = 0
    holds(asked, 150, ([sound, chain, cuts]) => {
      const frames = frameCount(sound)
      const run = new TraceRun(sound, chain.stages, { from: 0, to: frames }, 0)
      for (const cut of cuts.sort((a, b) => a - b)) for (const _ of run.goOn(Math.min(cut, frames)));
      for (const _ of run.goOn(frames));
      const { traces } = renderChain(sound, chain)
      const found = [...run.traces()]
      expect(found.map(({ stageId }) => stageId)).toEqual([...traces.keys()])
      for (const { stageId, gainDb } of found) expect(gainDb).toEqual(traces.get(stageId)?.gainDb)
      compared += found.length
    })
    expect(compared).toBeGreaterThan(50)
  })

  it('give what goes into the last stage that reduces gain, from the stretch on, where it is asked for', () => {
    const asked = fc.tuple(sounds({ min: 1, max: 9000 }), chains(), fc.nat(9000))
    let compared = 0
    holds(asked, 100, ([sound, chain, start]) => {
      const [frames, from] = [frameCount(sound), Math.min(start, frameCount(sound))]
      const output = sound.channels.map(() => new Float32Array(frames).fill(7))
      const run = new TraceRun(sound, chain.stages, { from, to: frames }, frames, output)
      for (const _ of run.goOn(frames));
      const last = chain.stages.findLastIndex(({ on, kind }) => on && stageDefinitions[kind].reducesGain)
      if (last < 0) return
      const { channels } = renderChain(sound, { ...chain, stages: chain.stages.slice(0, last) }).sound
      const first = Math.floor(from / TRACE_HOP_FRAMES) * TRACE_HOP_FRAMES
      for (const [c, samples] of output.entries()) {
        expect(samples.subarray(first)).toEqual(channels[c]?.subarray(first))
        expect(samples.subarray(0, first).every((sample) => sample === 7)).toBe(true)
      }
      compared++
    })
    expect(compared).toBeGreaterThan(20)
  })

  it('leave the sound as it is', () => {
    holds(fc.tuple(sounds({ min: 1, max: 3000 }), chains()), 40, ([sound, chain]) => {
      const before = sound.channels.map((samples) => samples.slice())
      const run = new TraceRun(sound, chain.stages, { from: 0, to: frameCount(sound) }, 0)
      for (const _ of run.goOn(frameCount(sound)));
      expect(sound.channels).toEqual(before)
    })
  })
})
