import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  type ChainDoc,
  frameCount,
  renderChain,
  type Sound,
  type StageInput,
  stageDefinitions,
  TRACE_HOP_FRAMES,
  TraceRun,
} from '../../src/core'
import { chains, holds, SEED, sounds } from '../setup/random-chains'

/** Longer than the lookahead of a stage, at any rate. */
const RUN_OUT_FRAMES = 20_000
/** Gains are handed on as 32-bit floats. */
const NOT_HEARD_DB = 1e-3

function lastReducing({ stages }: ChainDoc): number {
  return stages.findLastIndex(({ on, kind }) => on && stageDefinitions[kind].reducesGain)
}

function emptyInput(sound: Sound, value: number): StageInput {
  const frames = frameCount(sound)
  return {
    channels: sound.channels.map(() => new Float32Array(frames).fill(value)),
    gainDb: new Float32Array(frames + RUN_OUT_FRAMES).fill(value),
  }
}

describe(`gains worked out without the sound (seed ${SEED})`, () => {
  it('are those of a render, to the bit, in whatever pieces they are asked for', () => {
    const asked = fc.tuple(sounds({ min: 1, max: 9000 }), chains(), fc.array(fc.nat(9000)))
    let compared = 0
    holds(asked, 150, ([sound, chain, cuts]) => {
      const frames = frameCount(sound)
      const run = new TraceRun(sound, chain.stages, { stretch: { from: 0, to: frames } })
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

  it('keep what the last stage that reduces gain works on, from the stretch on, where that is asked for', () => {
    const asked = fc.tuple(sounds({ min: 1, max: 9000 }), chains(), fc.nat(9000))
    let compared = 0
    holds(asked, 100, ([sound, chain, start]) => {
      const [frames, from] = [frameCount(sound), Math.min(start, frameCount(sound))]
      const kept = emptyInput(sound, 7)
      const run = new TraceRun(sound, chain.stages, {
        stretch: { from, to: frames },
        warmUpFrames: frames,
        kept,
      })
      for (const _ of run.goOn(frames));
      const last = lastReducing(chain)
      if (last < 0) return
      const { channels } = renderChain(sound, { ...chain, stages: chain.stages.slice(0, last) }).sound
      const first = Math.floor(from / TRACE_HOP_FRAMES) * TRACE_HOP_FRAMES
      for (const [c, samples] of kept.channels.entries())
        expect(samples.subarray(first)).toEqual(channels[c]?.subarray(first))
      expect(kept.gainDb.subarray(first, frames).every((gain) => gain <= 0)).toBe(true)
      for (const samples of [...kept.channels, kept.gainDb])
        expect(samples.subarray(0, first).every((sample) => sample === 7)).toBe(true)
      compared++
    })
    expect(compared).toBeGreaterThan(20)
  })

  it('go on behind a stage whose gains are known as if it had been worked out anew', () => {
    const asked = fc.tuple(sounds({ min: 1, max: 9000 }), chains())
    let compared = 0
    holds(asked, 150, ([sound, chain]) => {
      const frames = frameCount(sound)
      const stretch = { from: 0, to: frames }
      const behind = lastReducing(chain)
      const ahead = lastReducing({ ...chain, stages: chain.stages.slice(0, Math.max(0, behind)) })
      if (ahead < 0) return
      const kept = emptyInput(sound, 0)
      const before = new TraceRun(sound, chain.stages.slice(0, ahead + 1), { stretch, kept })
      for (const _ of before.goOn(frames));
      const rest = { ...sound, channels: kept.channels }
      const run = new TraceRun(rest, chain.stages.slice(ahead), { stretch, firstGainDb: kept.gainDb })
      for (const _ of run.goOn(frames));
      const found = new Map([...run.traces()].map(({ stageId, gainDb }) => [stageId, gainDb]))
      const id = chain.stages[behind]?.id ?? ''
      expect([...found.keys()]).toEqual([id])
      const { traces } = renderChain(sound, chain)
      for (const [hop, gainDb] of (found.get(id) ?? []).entries())
        expect(Math.abs(gainDb - (traces.get(id)?.gainDb[hop] ?? Number.NaN))).toBeLessThan(NOT_HEARD_DB)
      compared++
    })
    expect(compared).toBeGreaterThan(20)
  })

  it('leave the sound as it is', () => {
    holds(fc.tuple(sounds({ min: 1, max: 3000 }), chains()), 40, ([sound, chain]) => {
      const before = sound.channels.map((samples) => samples.slice())
      const run = new TraceRun(sound, chain.stages, { stretch: { from: 0, to: frameCount(sound) } })
      for (const _ of run.goOn(frameCount(sound)));
      expect(sound.channels).toEqual(before)
    })
  })
})
