import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LiveTraces, type StretchTrace, withStretches } from '../../../src/compute/lanes/live-traces'
import { chainOf, type FrameRange, frameCount, renderChain, TRACE_HOP_FRAMES } from '../../../src/core'
import { abruptSounds } from '../../setup/abrupt-sounds'
import { stageWith } from '../../setup/chains'
import { lanesChain } from '../../setup/lanes'
import { chains, holds, SEED } from '../../setup/random-chains'
import { noise } from '../../setup/signals'

const RATE = 44_100
const FRAMES = 12 * RATE
/** Loud and soft by turns, ten times a second to once in three seconds. */
const take = noise(RATE, 12, 1, 5, (at) => 0.02 + 0.4 * Math.sin(at * at * 2) ** 2)
const { stages } = lanesChain()
const STRETCH = { from: 5 * RATE + 17, to: 8 * RATE + 3 }
/** A picture of 24 dB over 32 pixels does not show this much, dB. */
const NOT_SEEN_DB = 0.05

function pieceOf(traces: LiveTraces, to: number): StretchTrace[] {
  const steps = traces.goOn(to)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

const tracesOf = (of = stages, sound = take, stretch: FrameRange = STRETCH) =>
  pieceOf(new LiveTraces(sound, of, stretch), stretch.to)

describe('traces of a stretch, ahead of the rest', () => {
  it('know of what was loud before the stretch, for as long as a release lasts', () => {
    const hushed = noise(RATE, 6, 1, 5, (at) => (at < 4.4 ? 0.5 : 0.001))
    const slow = stageWith('compressor', { thresholdDb: -40, ratio: 8, releaseMs: 400 }, 'slow')
    const [live] = tracesOf([slow], hushed, { from: 5 * RATE, to: 6 * RATE })
    const whole = renderChain(hushed, chainOf([slow])).traces.get('slow')?.gainDb[live?.firstHop ?? 0] ?? 0
    expect(whole).toBeLessThan(-3)
    expect(Math.abs((live?.gainDb[0] ?? 0) - whole)).toBeLessThan(NOT_SEEN_DB)
  })

  it('are the same in however many pieces they come', () => {
    const traces = new LiveTraces(take, stages, STRETCH)
    const pieces = [5.5, 6, 7.7].flatMap((seconds) => pieceOf(traces, Math.round(seconds * RATE)))
    pieces.push(...pieceOf(traces, STRETCH.to))
    expect(traces.at).toBe(STRETCH.to)
    for (const { stageId, firstHop, gainDb } of tracesOf()) {
      const joined = new Float32Array(gainDb.length)
      for (const piece of pieces.filter((one) => one.stageId === stageId))
        joined.set(piece.gainDb, piece.firstHop - firstHop)
      expect(joined).toEqual(gainDb)
    }
  })

  it('reach to the end of the take and no further', () => {
    const [live] = tracesOf(stages, take, { from: 11 * RATE, to: FRAMES })
    expect((live?.firstHop ?? 0) + (live?.gainDb.length ?? 0)).toBe(Math.ceil(FRAMES / TRACE_HOP_FRAMES))
  })

  it(`are to the bit those of a render, from the start of a take that begins abruptly (seed ${SEED})`, () => {
    let compared = 0
    const takes = fc.tuple(abruptSounds({ min: 1, max: 3000 }), chains(undefined, { minLength: 1 }))
    holds(takes, 100, ([sound, doc]) => {
      const on = doc.stages.filter((stage) => stage.on)
      const { traces } = renderChain(sound, chainOf(on))
      const frames = frameCount(sound)
      for (const { stageId, gainDb } of tracesOf(on, sound, { from: 0, to: frames })) {
        expect(gainDb).toEqual(traces.get(stageId)?.gainDb)
        compared += gainDb.length
      }
    })
    expect(compared).toBeGreaterThan(100)
  })

  it('are put into the trace that is known, which stays as it is', () => {
    const known = { hopFrames: TRACE_HOP_FRAMES, gainDb: Float32Array.of(-1, -1, -1, -1) }
    const stretch = { stageId: 'hold', firstHop: 1, gainDb: Float32Array.of(-5, -6) }
    const frames = 4 * TRACE_HOP_FRAMES
    expect(withStretches(known, [stretch], frames).gainDb).toEqual(Float32Array.of(-1, -5, -6, -1))
    expect(withStretches(null, [stretch], frames).gainDb).toEqual(Float32Array.of(0, -5, -6, 0))
    expect(known.gainDb).toEqual(Float32Array.of(-1, -1, -1, -1))
  })
})
