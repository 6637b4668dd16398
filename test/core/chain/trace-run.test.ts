import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { frameCount, renderChain, TraceRun } from '../../../src/core'
import { chains, holds, SEED, sounds } from '../../setup/random-chains'

describe(`gains worked out without the sound (seed ${SEED})`, () => {
  it('are those of a render, to the bit, in whatever pieces they are asked for', () => {
    const asked = fc.tuple(sounds({ min: 1, max: 9000 }), chains(), fc.array(fc.nat(9000)))
    let compared = 0
    holds(asked, 150, ([sound, chain, cuts]) => {
      const frames = frameCount(sound)
      const run = new TraceRun(sound, chain.stages, { from: 0, to: frames })
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

  it('leave the sound as it is', () => {
    holds(fc.tuple(sounds({ min: 1, max: 3000 }), chains()), 40, ([sound, chain]) => {
      const before = sound.channels.map((samples) => samples.slice())
      const run = new TraceRun(sound, chain.stages, { from: 0, to: frameCount(sound) })
      for (const _ of run.goOn(frameCount(sound)));
      expect(sound.channels).toEqual(before)
    })
  })
})
