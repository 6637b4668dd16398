import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type LanesInput, lanesJob } from '../../../src/compute/jobs/lanes-job'
import { PIECE_FRAMES } from '../../../src/compute/lanes/lane-ground'
import type { StretchTrace } from '../../../src/compute/lanes/live-traces'
import { takeExcerpt } from '../../../src/compute/lanes/take-excerpt'
import { HandLanes } from '../../../src/compute/pool/hand-lanes'
import { Pool } from '../../../src/compute/pool/pool'
import type { WorkerMemory } from '../../../src/compute/worker/worker-memory'
import {
  chainOf,
  type FrameRange,
  finished,
  frameCount,
  renderChain,
  TRACE_HOP_FRAMES,
} from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { hashed, memoryOf, toolsOf } from '../../setup/evidence-here'
import { furthestDb, LANES, lanesChain } from '../../setup/lanes'
import { SEED } from '../../setup/random-chains'
import { noise } from '../../setup/signals'
import { WorkersHere } from '../../setup/workers-here'

const RATE = 44_100
const take = hashed(noise(RATE, 14, 1, 5, (at) => 0.02 + 0.4 * Math.sin(at * at * 2) ** 2))
const WHOLE = { from: 0, to: frameCount(take.sound) }
const PIECES = Math.ceil(WHOLE.to / PIECE_FRAMES)
const { stages } = lanesChain()
/** A picture of 24 dB over 32 pixels does not show this much, dB. */
const NOT_SEEN_DB = 0.05

let come: (readonly StretchTrace[])[]
beforeEach(() => {
  come = []
})

function expectLanes(of: readonly (typeof stages)[number][], stretch: FrameRange): void {
  const { traces } = renderChain(take.sound, chainOf(of))
  for (const id of LANES)
    expect(furthestDb(come.flat(), id, traces.get(id)?.gainDb, stretch)).toBeLessThan(NOT_SEEN_DB)
}

/** The chain with another ratio of its first compressor. */
const moved = stages.map((stage) =>
  stage.id === LANES[0] && stage.kind === 'compressor'
    ? { ...stage, settings: { ...stage.settings, ratio: 12 } }
    : stage,
)

describe('a job of lanes', () => {
  const excerptOf = (stretch: FrameRange) => takeExcerpt('a', take.sound, stretch, 6, 0.1)

  /** @param pieces after which something newer is known */
  function trace(
    memory: WorkerMemory,
    input: Partial<LanesInput>,
    pieces = Number.POSITIVE_INFINITY,
  ): boolean {
    let left = pieces
    const tools = toolsOf<readonly StretchTrace[]>(
      memory,
      (traces) => void come.push(structuredClone(traces)),
      () => --left > 0,
    )
    return finished(lanesJob({ excerptKey: 'a', excerpt: null, prefix: [], stages, ...input }, tools))
  }

  it('traces those of a render to within what can be seen, a piece of all of them at a time', () => {
    trace(memoryOf(take), { excerpt: excerptOf(WHOLE) })
    expectLanes(stages, WHOLE)
    expect(come).toHaveLength(PIECES)
    for (const piece of come) {
      expect(piece.map(({ stageId }) => stageId)).toEqual(LANES)
      expect(new Set(piece.map(({ firstHop }) => firstHop)).size).toBe(1)
    }
  })

  it('is right in a stretch somewhere in the take, wherever the stages are divided', () => {
    const stretch = { from: 7 * RATE + 17, to: 9 * RATE + 3 }
    for (const count of [0, 1, 3, stages.length]) {
      come = []
      trace(memoryOf(take), {
        excerpt: excerptOf(stretch),
        prefix: stages.slice(0, count),
        stages: stages.slice(count),
      })
      const { traces } = renderChain(take.sound, chainOf(stages))
      const traced = LANES.filter((id) => stages.slice(count).some((stage) => stage.id === id))
      expect(new Set(come.flat().map(({ stageId }) => stageId))).toEqual(new Set(traced))
      for (const id of traced)
        expect(furthestDb(come.flat(), id, traces.get(id)?.gainDb, stretch)).toBeLessThan(NOT_SEEN_DB)
    }
  })

  it('comes a piece further however often a hand moves, and is then of the newest setting all around', () => {
    const memory = memoryOf(take)
    for (let move = 1; move <= PIECES; move++) {
      trace(memory, { excerpt: move === 1 ? excerptOf(WHOLE) : null }, 1)
      expect(come).toHaveLength(move)
    }
    expectLanes(stages, WHOLE)
    trace(memory, {}, 2)
    come = []
    trace(memory, { stages: moved })
    expect(come[0]?.[0]?.firstHop).toBe((2 * PIECE_FRAMES) / TRACE_HOP_FRAMES)
    expectLanes(moved, WHOLE)
  })

  it('says so where it does not have the excerpt', () => {
    const memory = memoryOf(take)
    expect(trace(memory, {})).toBe(false)
    expect(trace(memory, { excerpt: excerptOf({ from: 0, to: RATE }) }, 1)).toBe(true)
    expect(trace(memory, { excerptKey: 'b' })).toBe(false)
    memory.adopt(take)
    expect(trace(memory, {})).toBe(false)
  })
})

describe(`lanes that follow a hand (seed ${SEED})`, () => {
  let workers: WorkersHere
  let pool: Pool
  let lanes: HandLanes
  const start = (count: number) => {
    workers = new WorkersHere()
    pool = new Pool(workers.make, count)
    lanes = new HandLanes(pool)
  }
  beforeEach(() => start(2))
  afterEach(() => pool.end())
  const traceOf = (stretch: FrameRange, of = stages, prefix: typeof stages = []) =>
    lanes.trace({ take, prefix, stages: of, stretch }, (traces) => void come.push(traces))
  /** Of each worker, in order, which of its jobs brought an excerpt. */
  const bring = () =>
    workers.started.map(({ asked }) =>
      asked.flatMap((message) => {
        const input = message.type === 'job' ? message.input : null
        return typeof input === 'object' && input && 'excerpt' in input ? [input.excerpt !== null] : []
      }),
    )

  it('are together those of a render, whatever the stretch and however many workers share it', async () => {
    const stretches = fc.tuple(fc.integer({ min: 2, max: 4 }), fc.nat(WHOLE.to), fc.nat(WHOLE.to))
    await fc.assert(
      fc.asyncProperty(stretches, async ([count, a, b]) => {
        come = []
        start(count)
        const stretch = { from: Math.min(a, b), to: Math.max(a, b) }
        await traceOf(stretch)
        expectLanes(stages, stretch)
        // Nothing twice: who came last would win.
        for (const id of LANES) {
          const hops = come
            .flat()
            .reduce((sum, { stageId, gainDb }) => sum + (stageId === id ? gainDb.length : 0), 0)
          const [first, end] = [stretch.from / TRACE_HOP_FRAMES, stretch.to / TRACE_HOP_FRAMES]
          expect(hops).toBe(Math.ceil(end) - Math.floor(first))
        }
        pool.end()
      }),
      { seed: SEED, numRuns: 8, endOnFailure: true },
    )
  })

  it('are given an excerpt once, and another for another stretch; the take stays whole', async () => {
    await traceOf(WHOLE)
    await traceOf(WHOLE, moved)
    await traceOf({ ...WHOLE, to: 5 * RATE })
    const each = [true, false, true]
    expect(bring()).toEqual([each, each])
    expect(frameCount(take.sound)).toBe(WHOLE.to)
  })

  it('are not asked for where no stage reduces gain', async () => {
    await traceOf(WHOLE, [stageWith('equaliser', {}, 'low'), { ...stageWith('compressor', {}), on: false }])
    expect(workers.started).toEqual([])
  })

  it('end when something newer is asked for, or they are left', async () => {
    const first = traceOf(WHOLE)
    const second = traceOf(WHOLE, moved)
    await first
    lanes.leave()
    await second
    expect(come.length).toBeLessThan(2 * PIECES)
    come = []
    await traceOf(WHOLE, moved)
    await traceOf(WHOLE, moved)
    expectLanes(moved, WHOLE)
  })

  it('go on with another worker in the place of one that died, from the next request at the latest', async () => {
    await traceOf(WHOLE)
    workers.started[0]?.terminate()
    await traceOf(WHOLE, moved)
    come = []
    await traceOf(WHOLE, moved)
    expectLanes(moved, WHOLE)
  })
})
