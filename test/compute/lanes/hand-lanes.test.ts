import fc from 'fast-check'
import { beforeEach, describe, expect, it } from 'vitest'
import { Tracer } from '../../../src/compute/worker/tracer'
import type { FromTracer, ToTracer } from '../../../src/compute/worker/tracer-protocol'
import { type TracerPort, Tracers } from '../../../src/compute/worker/tracers'
import { frameCount, renderChain, TRACE_HOP_FRAMES } from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { eventually } from '../../setup/eventually'
import { furthestDb, LANES, lanesChain } from '../../setup/lanes'
import { noise } from '../../setup/signals'

const RATE = 44_100
const take = noise(RATE, 14, 1, 5, (at) => 0.02 + 0.4 * Math.sin(at * at * 2) ** 2)
const WHOLE = { from: 0, to: frameCount(take) }
const chain = lanesChain()
const NOT_SEEN_DB = 0.05

type Come = Extract<FromTracer, { readonly type: 'live-traces' }>

/** Traces in this thread, late, as between threads; or never answers. */
class WorkerHere implements TracerPort {
  onmessage: TracerPort['onmessage'] = null
  readonly asked: ToTracer[] = []
  answers = true
  private tracer: Tracer | null = null

  postMessage(message: ToTracer, transfer: Transferable[]): void {
    const data = structuredClone(message, { transfer: transfer as ArrayBuffer[] })
    this.asked.push(data)
    if (data.type === 'ground') this.tracer = new Tracer(data.ground)
    if (data.type === 'trace' && this.answers) void this.trace(data.id, data.stages)
  }

  private async trace(id: number, stages: Parameters<Tracer['round']>[0]): Promise<void> {
    await this.tracer?.round(
      stages,
      () => true,
      (traces) => this.tell({ type: 'live-traces', id, traces }),
    )
    this.tell({ type: 'round-over', id })
  }

  private tell(data: FromTracer): void {
    this.onmessage?.(new MessageEvent('message', { data }))
  }
}

let workers: WorkerHere[]
let come: Come[]
beforeEach(() => {
  workers = []
  come = []
})

function tracersOf(count: number): Tracers {
  const tracers = new Tracers((traces) => come.push(traces))
  workers = Array.from({ length: count }, () => new WorkerHere())
  for (const [tracer, worker] of workers.entries()) tracers.add(tracer, worker)
  return tracers
}

const grounds = () =>
  workers.flatMap(({ asked }) => asked.flatMap((m) => (m.type === 'ground' ? [m.ground] : [])))
const part = { sound: take, stages: chain.stages }

describe('tracers side by side', () => {
  it('bring together the lanes of a render, whatever the stretch', async () => {
    const { traces } = renderChain(take, chain)
    const stretches = fc.tuple(fc.integer({ min: 1, max: 5 }), fc.nat(WHOLE.to), fc.nat(WHOLE.to))
    await fc.assert(
      fc.asyncProperty(stretches, async ([count, a, b]) => {
        come = []
        const stretch = { from: Math.min(a, b), to: Math.max(a, b) }
        await tracersOf(count).trace(1, part, stretch)
        for (const id of LANES) {
          const stretchTraces = come.flatMap((one) => one.traces)
          expect(furthestDb(stretchTraces, id, traces.get(id)?.gainDb, stretch)).toBeLessThan(NOT_SEEN_DB)
          // Nothing twice: who came last would win.
          const hops = stretchTraces
            .filter(({ stageId }) => stageId === id)
            .reduce((sum, { gainDb }) => sum + gainDb.length, 0)
          const [first, end] = [stretch.from / TRACE_HOP_FRAMES, stretch.to / TRACE_HOP_FRAMES]
          expect(hops).toBe(Math.ceil(end) - Math.floor(first))
        }
      }),
      { numRuns: 12 },
    )
  })

  it('are given the same ground once, and another where the sound or the stretch is another', async () => {
    const tracers = tracersOf(2)
    await tracers.trace(1, part, WHOLE)
    await tracers.trace(2, part, WHOLE)
    expect(grounds()).toHaveLength(2)
    await tracers.trace(3, part, { ...WHOLE, to: 5 * RATE })
    expect(grounds()).toHaveLength(4)
    const other = { ...take, channels: take.channels.map((samples) => samples.slice()) }
    await tracers.trace(4, { ...part, sound: other }, { ...WHOLE, to: 5 * RATE })
    expect(grounds()).toHaveLength(6)
  })

  it('leave the sound where it is', async () => {
    await tracersOf(2).trace(1, part, WHOLE)
    expect(frameCount(take)).toBe(WHOLE.to)
  })

  it('are not asked where no stage reduces gain', async () => {
    await tracersOf(2).trace(1, { sound: take, stages: [stageWith('equaliser', {}, 'low')] }, WHOLE)
    expect(workers.flatMap(({ asked }) => asked)).toEqual([])
  })

  it('end a request when something newer is asked, or the take goes', async () => {
    const tracers = tracersOf(2)
    for (const worker of workers) worker.answers = false
    const first = tracers.trace(1, part, WHOLE)
    const second = tracers.trace(2, part, WHOLE)
    await first
    tracers.leave()
    await second
    expect(workers.map(({ asked }) => asked.at(-1)?.type)).toEqual(['leave', 'leave'])
  })

  it('go on without one that fails or never comes up', async () => {
    const tracers = tracersOf(2)
    const [broken] = workers
    if (!broken) throw new Error('no worker')
    broken.answers = false
    const under = tracers.trace(1, part, WHOLE)
    await eventually(() => expect(come.length).toBeGreaterThan(0))
    tracers.giveUp(0)
    await under
    come = []
    await tracers.trace(2, part, WHOLE)
    const { traces } = renderChain(take, chain)
    const stretchTraces = come.flatMap((one) => one.traces)
    for (const id of LANES)
      expect(furthestDb(stretchTraces, id, traces.get(id)?.gainDb, WHOLE)).toBeLessThan(NOT_SEEN_DB)
    tracers.giveUp(1)
    come = []
    await tracers.trace(3, part, WHOLE)
    expect(come).toEqual([])
  })

  it('share with one that comes up later, from the next request on', async () => {
    const tracers = tracersOf(1)
    await tracers.trace(1, part, WHOLE)
    const late = new WorkerHere()
    tracers.add(1, late)
    await tracers.trace(2, part, WHOLE)
    expect(late.asked.map(({ type }) => type)).toEqual(['ground', 'trace'])
    const ends = [...workers, late].map(
      ({ asked }) => asked.filter((m) => m.type === 'ground').at(-1)?.ground,
    )
    expect(ends.map((ground) => ground && frameCount(ground.sound) < WHOLE.to)).toEqual([true, true])
  })
})
