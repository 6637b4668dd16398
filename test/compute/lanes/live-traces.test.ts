import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { LiveTraces, type StretchTrace, withStretches } from '../../../src/compute/lanes/live-traces'
import { groundOf, Tracer } from '../../../src/compute/worker/tracer'
import {
  type ChainDoc,
  chainOf,
  frameCount,
  type Rendering,
  renderChain,
  type Sound,
  TRACE_HOP_FRAMES,
} from '../../../src/core'
import { abruptSounds } from '../../setup/abrupt-sounds'
import { stageWith } from '../../setup/chains'
import { chains, holds, SEED, stages } from '../../setup/random-chains'
import { noise } from '../../setup/signals'

const RATE = 44_100
const FRAMES = 12 * RATE
/** Loud and soft by turns, ten times a second to once in three seconds. */
const take = noise(RATE, 12, 1, 5, (at) => 0.02 + 0.4 * Math.sin(at * at * 2) ** 2)

const low = stageWith('equaliser', {}, 'low')
const hold = stageWith('compressor', { thresholdDb: -30, ratio: 4, lookaheadMs: 5, releaseMs: 200 }, 'hold')
const off = { ...stageWith('compressor', { thresholdDb: -60 }, 'off'), on: false }
const soften = stageWith('de-esser', { thresholdDb: -40, rangeDb: 12 }, 'soften')
const level = stageWith('gain', { gainDb: -3 }, 'level')
const chain = chainOf([low, hold, off, soften, level])

const STRETCH = { from: 5 * RATE + 17, to: 8 * RATE + 3 }
/** A picture of 24 dB over 32 pixels does not show this much, dB. */
const NOT_SEEN_DB = 0.05

function tracesOf(doc: ChainDoc, previous?: Rendering, stretch = STRETCH): StretchTrace[] {
  const part = changedPart(take, doc, previous)
  return part ? piecesOf(new LiveTraces(part, stretch), stretch.to) : []
}

function piecesOf(traces: LiveTraces, to: number): StretchTrace[] {
  const steps = traces.goOn(to)
  for (;;) {
    const step = steps.next()
    if (step.done) return step.value
  }
}

function changed(stageId: string, ratio: number): ChainDoc {
  return chainOf(
    chain.stages.map((stage) =>
      stage.id === stageId && stage.kind === 'compressor'
        ? { ...stage, settings: { ...stage.settings, ratio } }
        : stage,
    ),
  )
}

describe('traces of a stretch, ahead of the rest', () => {
  it('are those of the whole take to within what can be seen, each stage as it is done', () => {
    const live = tracesOf(chain)
    expect(live.map(({ stageId }) => stageId)).toEqual(['hold', 'soften'])
    const { traces } = renderChain(take, chain)
    for (const { stageId, firstHop, gainDb } of live) {
      expect(firstHop).toBe(Math.floor(STRETCH.from / TRACE_HOP_FRAMES))
      expect(gainDb.length).toBe(Math.ceil(STRETCH.to / TRACE_HOP_FRAMES) - firstHop)
      const whole = traces.get(stageId)?.gainDb.subarray(firstHop, firstHop + gainDb.length)
      const furthest = gainDb.reduce((most, db, i) => Math.max(most, Math.abs(db - (whole?.[i] ?? 0))), 0)
      expect(furthest).toBeLessThan(NOT_SEEN_DB)
      expect(Math.min(...gainDb)).toBeLessThan(-3)
    }
  })

  it('know of what was loud before the stretch, for as long as a release lasts', () => {
    const hushed = noise(RATE, 6, 1, 5, (at) => (at < 4.4 ? 0.5 : 0.001))
    const slow = chainOf([stageWith('compressor', { thresholdDb: -40, ratio: 8, releaseMs: 400 }, 'slow')])
    const stretch = { from: 5 * RATE, to: 6 * RATE }
    const [live] = piecesOf(new LiveTraces({ sound: hushed, stages: slow.stages }, stretch), stretch.to)
    const whole = renderChain(hushed, slow).traces.get('slow')?.gainDb[live?.firstHop ?? 0] ?? 0
    expect(whole).toBeLessThan(-3)
    expect(Math.abs((live?.gainDb[0] ?? 0) - whole)).toBeLessThan(NOT_SEEN_DB)
  })

  it('are the same in however many pieces they come', () => {
    const whole = tracesOf(chain)
    const traces = new LiveTraces({ sound: take, stages: chain.stages }, STRETCH)
    const pieces = [5.5, 6, 7.7].flatMap((seconds) => piecesOf(traces, Math.round(seconds * RATE)))
    pieces.push(...piecesOf(traces, STRETCH.to))
    expect(traces.at).toBe(STRETCH.to)
    for (const { stageId, firstHop, gainDb } of whole) {
      const joined = new Float32Array(gainDb.length)
      for (const piece of pieces.filter((one) => one.stageId === stageId))
        joined.set(piece.gainDb, piece.firstHop - firstHop)
      expect(joined).toEqual(gainDb)
    }
  })

  it('start from what is known of the stages before the change', () => {
    const previous = renderChain(take, chain, { keep: true })
    const doc = changed('hold', 8)
    expect(tracesOf(doc, previous)).toEqual(tracesOf(doc))
    expect(tracesOf(chain, previous)).toEqual([])
    const behind = chainOf([...chain.stages.slice(0, 4), { ...level, settings: { gainDb: 0 } }])
    expect(tracesOf(behind, previous)).toEqual([])
  })

  it('are none where nothing has changed, whatever the chain ends with', () => {
    const ended = chainOf([low, hold])
    expect(tracesOf(ended, renderChain(take, ended, { keep: true }))).toEqual([])
  })

  it('are not built on another take', () => {
    const other = { ...take, channels: take.channels.map((samples) => samples.map((x) => x / 8)) }
    const previous = renderChain(other, chain, { keep: true })
    for (const doc of [chain, changed('hold', 8)]) expect(tracesOf(doc, previous)).toEqual(tracesOf(doc))
  })

  it('reach to the end of the take and no further', () => {
    const [live] = tracesOf(chain, undefined, { from: 11 * RATE, to: FRAMES })
    expect((live?.firstHop ?? 0) + (live?.gainDb.length ?? 0)).toBe(Math.ceil(FRAMES / TRACE_HOP_FRAMES))
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

describe(`traces from the start of a take that begins abruptly (seed ${SEED})`, () => {
  const edited = fc.tuple(
    abruptSounds({ min: 1, max: 3000 }),
    chains(undefined, { minLength: 1, maxLength: 4 }),
    fc.nat(3),
    stages(),
  )

  /** The last stage but so many changed, and what of that has to be traced anew. */
  function changedBehind(sound: Sound, before: ChainDoc, place: number, stage: ChainDoc['stages'][number]) {
    const at = place % before.stages.length
    const doc = chainOf(before.stages.with(at, { ...stage, id: 'changed' }))
    const part = changedPart(sound, doc, renderChain(sound, before, { keep: true }))
    if (!part) throw new Error('a stage has changed')
    return { part, ...renderChain(sound, doc) }
  }

  it('are to the bit those of a render, whichever stage has changed', () => {
    let compared = 0
    holds(edited, 120, ([sound, before, place, stage]) => {
      const { part, traces, latencyFrames } = changedBehind(sound, before, place, stage)
      const frames = frameCount(sound)
      // Of what rings on behind the take no more was kept than the stages before the change needed.
      const hops = Math.floor(Math.max(0, frames - latencyFrames) / TRACE_HOP_FRAMES)
      for (const { stageId, gainDb } of piecesOf(new LiveTraces(part, { from: 0, to: frames }), frames)) {
        expect(gainDb.subarray(0, hops)).toEqual(traces.get(stageId)?.gainDb.subarray(0, hops))
        compared += hops
      }
    })
    expect(compared).toBeGreaterThan(100)
  })

  it('are so too from ground that was cut out of the sound for another worker', async () => {
    const sound = {
      sampleRate: RATE,
      channels: [take.channels[0]?.slice(40_000, 60_000) ?? new Float32Array()],
    }
    const saturated = chainOf([stageWith('saturator', { driveDb: 18 }), hold])
    const harder = stageWith('compressor', { thresholdDb: -60, attackMs: 0.02 })
    const { part, traces } = changedBehind(sound, saturated, 1, harder)
    const found: StretchTrace[] = []
    const ground = groundOf(part.sound, { from: 0, to: 10_000 }, 1, 0.1)
    await new Tracer(ground).round(
      part.stages,
      () => true,
      (come) => void found.push(...come),
    )
    const [trace] = found
    expect(trace?.firstHop).toBe(0)
    expect(trace?.gainDb).toEqual(traces.get('changed')?.gainDb.subarray(0, trace?.gainDb.length))
  })
})
