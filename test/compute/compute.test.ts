import fc from 'fast-check'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Compute } from '../../src/compute/compute'
import { ComputeError } from '../../src/compute/compute-error'
import type { EvidenceListener } from '../../src/compute/evidence-wanted'
import type { Want } from '../../src/compute/facts/fact-values'
import type { StretchTrace } from '../../src/compute/lanes/live-traces'
import type { ToWorker } from '../../src/compute/messages'
import { Pool } from '../../src/compute/pool/pool'
import {
  type ChainDoc,
  chainOf,
  comparisonOf,
  type FrameRange,
  matchingMakeupDb,
  measure,
  pausesOf,
  renderChain,
  type Scope,
} from '../../src/core'
import { stageWith } from '../setup/chains'
import { eventually } from '../setup/eventually'
import { evidenceHere } from '../setup/evidence-here'
import { SEED } from '../setup/random-chains'
import { noise } from '../setup/signals'
import { WorkersHere } from '../setup/workers-here'

const RATE = 8000
const take = noise(RATE, 3, 1, 3, (at) => (at < 1 ? 0.5 : 0.1))
const other = noise(RATE, 2, 1, 4, () => 0.2)
const LIVE = { from: 0, to: 3 * RATE }

function chainAt(thresholdDb: number): ChainDoc {
  return chainOf([stageWith('compressor', { thresholdDb, ratio: 4 }, 'hold'), stageWith('gain', {}, 'level')])
}

let workers: WorkersHere
let pool: Pool
let compute: Compute
let live: StretchTrace[]
let tracesOver = 0
const listener: EvidenceListener = {
  onProgress: () => undefined,
  onLiveTraces: (traces) => void live.push(...traces),
  onTracesOver: () => void tracesOver++,
}
function ask(
  chain: ChainDoc,
  hand: FrameRange | null = null,
  scope: Scope = { kind: 'chain' },
  loop: FrameRange | null = null,
) {
  return compute.evidence({ comparison: comparisonOf(chain, scope), loop, live: hand }, listener)
}

/** The facts that a message asks for. */
function wantsIn(message: ToWorker): readonly Want[] {
  if (message.type !== 'job' || message.kind !== 'facts') return []
  const { input } = message
  return typeof input === 'object' && input !== null && 'wants' in input && Array.isArray(input.wants)
    ? input.wants
    : []
}

beforeEach(async () => {
  workers = new WorkersHere()
  pool = new Pool(workers.make, 2)
  compute = new Compute(pool)
  live = []
  tracesOver = 0
  expect(await compute.setTake(take)).toEqual(measure(take))
})
afterEach(() => {
  vi.unstubAllGlobals()
  pool.end()
  workers.end()
})

describe('evidence', () => {
  it('is that of renders, with traces of what is seen ahead of it', async () => {
    const evidence = await ask(chainAt(-30), LIVE)
    const { sound, traces } = renderChain(take, chainAt(-30))
    expect(evidence).toEqual(evidenceHere(take, comparisonOf(chainAt(-30), { kind: 'chain' })))
    expect(evidence?.processed.measures).toEqual(measure(sound, { pauses: pausesOf(take) }))
    expect(evidence?.stages.get('hold')?.trace).toEqual(traces.get('hold'))
    const drawn = new Float32Array(traces.get('hold')?.gainDb.length ?? 0)
    for (const { firstHop, gainDb } of live) drawn.set(gainDb, firstHop)
    const furthest = drawn.reduce(
      (most, db, hop) => Math.max(most, Math.abs(db - (traces.get('hold')?.gainDb[hop] ?? 0))),
      0,
    )
    expect(furthest).toBeLessThan(0.05)
    expect(tracesOver).toBe(1)
  })

  it('seen before comes at once and without a message, over any loop, with the very same parts', async () => {
    const [first, second] = [await ask(chainAt(-30)), await ask(chainAt(-20))]
    const asked = workers.asked.filter(({ type }) => type !== 'ping').length
    const again = await ask(chainAt(-30), LIVE)
    const looped = await ask(chainAt(-20), null, { kind: 'chain' }, { from: 0, to: 2 * RATE })
    expect(workers.asked.filter(({ type }) => type !== 'ping')).toHaveLength(asked)
    expect(again?.processed).toBe(first?.processed)
    expect(again?.bypassed).toBe(second?.bypassed)
    expect([looped?.processed, looped?.matching.measuredOver]).toEqual([second?.processed, 'loop'])
  })

  it('of the newest request is given, and null for those before it', async () => {
    const answers = await Promise.all(
      [-20, -25, -30, -35].map((thresholdDb) => ask(chainAt(thresholdDb), LIVE)),
    )
    expect(answers.map((answer) => answer === null)).toEqual([true, true, true, false])
    expect(answers[3]?.chains.processed).toEqual(chainAt(-35))
    const wanted = workers.asked.flatMap((message) =>
      message.type === 'job' && message.kind === 'facts' ? [message.id] : [],
    )
    // Of the take, and of both sides of the newest.
    expect(wanted).toHaveLength(3)
  })

  it('waits for the hand to rest, and no longer once it is told so', async () => {
    const { setTimeout: later } = globalThis
    // No wait of any length ever ends by itself.
    vi.stubGlobal('setTimeout', (then: () => void, ms = 0) => (ms > 0 ? 0 : later(then, 0)))
    const asked = () => workers.asked.filter((each) => each.type === 'job' && each.kind === 'facts').length
    const [before, waiting] = [asked(), ask(chainAt(-30), LIVE)]
    await eventually(() => expect(tracesOver).toBe(1))
    expect(asked()).toBe(before)
    compute.handRests()
    expect((await waiting)?.chains.processed).toEqual(chainAt(-30))
  })

  it('needs what is missing only: nothing of a side that is known, of the other half from each worker', async () => {
    await ask(chainAt(-30))
    const before = workers.started.map(({ asked }) => asked.length)
    expect(await ask(chainAt(-36))).toEqual(evidenceHere(take, comparisonOf(chainAt(-36), { kind: 'chain' })))
    const asked = workers.started.map((worker, k) => worker.asked.slice(before[k]).flatMap(wantsIn))
    expect(asked.map((wants) => wants.length).sort()).toEqual([1, 2])
    const atTheEnd = asked.flat().filter(({ stages }) => stages.length === 2)
    const names = atTheEnd.flatMap((want) => want.names)
    expect([...new Set(names)]).toEqual(names)
  })

  it('of a take that only one worker may hold is asked of that one', async () => {
    await ask(chainAt(-30))
    vi.spyOn(pool, 'sharesOut').mockReturnValue(false)
    const jobs = () => workers.asked.filter(({ type }) => type === 'job').length
    const before = jobs()
    await ask(chainAt(-36))
    expect(jobs()).toBe(before + 1)
  })

  it('is none about a take that is gone', async () => {
    const old = ask(chainAt(-30), LIVE)
    const measured = compute.setTake(other)
    expect(await old).toBeNull()
    expect(await measured).toEqual(measure(other))
    live = []
    await new Promise((resolve) => setTimeout(resolve, 50))
    expect(live).toEqual([])
    expect(await ask(chainAt(-30))).toEqual(
      evidenceHere(other, comparisonOf(chainAt(-30), { kind: 'chain' })),
    )
  })

  it('that could not be worked out says why, and can be asked for again', async () => {
    await ask(chainAt(-20))
    for (const worker of workers.alive) worker.terminate()
    workers.loads = false
    await expect(ask(chainAt(-30))).rejects.toMatchObject({ name: 'ComputeError', code: 'not-loaded' })
    workers.loads = true
    expect((await ask(chainAt(-30)))?.chains.processed).toEqual(chainAt(-30))
  })
})

describe('a take', () => {
  it('that another took the place of is not measured', async () => {
    const overtaken = compute.setTake(other)
    const measured = compute.setTake(take)
    expect([await overtaken, await measured]).toEqual([null, measure(take)])
  })

  it('seen before is measured at once, and can be delivered', async () => {
    await compute.setTake(other)
    const asked = workers.asked.filter(({ type }) => type === 'job').length
    expect(await compute.setTake(take)).toEqual(measure(take))
    expect(workers.asked.filter(({ type }) => type === 'job')).toHaveLength(asked)
    const { signal } = new AbortController()
    expect(await compute.render(chainAt(-30), () => undefined, signal)).toEqual(
      renderChain(take, chainAt(-30)).sound,
    )
  })

  it('that cannot be measured says why', async () => {
    pool.end()
    const none = new Pool(() => {
      throw new ComputeError('no-workers', 'this browser runs no workers.')
    }, 2)
    await expect(new Compute(none).setTake(take)).rejects.toMatchObject({ code: 'no-workers' })
  })
})

describe('makeup', () => {
  it('is that of the core to a tenth of a dB, and fails where there is no such compressor', async () => {
    const found = await compute.makeup(chainAt(-30), 'hold')
    expect(found).toBeCloseTo(matchingMakeupDb(take, chainAt(-30), 'hold') ?? Number.NaN, 1)
    await expect(compute.makeup(chainAt(-30), 'level')).rejects.toMatchObject({ code: 'failed' })
  })
})

describe(`workers that are killed while settings change (seed ${SEED})`, () => {
  it('leave the figures of the last setting right', async () => {
    const moves = fc.array(
      fc.record({
        thresholdDb: fc.integer({ min: -40, max: -10 }),
        kill: fc.option(fc.nat(1)),
        pauseMs: fc.nat(60),
        hand: fc.boolean(),
      }),
      { minLength: 2, maxLength: 5 },
    )
    await fc.assert(
      fc.asyncProperty(moves, async (all) => {
        let last: Promise<unknown> = Promise.resolve()
        for (const { thresholdDb, kill, pauseMs, hand } of all) {
          last = ask(chainAt(thresholdDb), hand ? LIVE : null)
          await new Promise((resolve) => setTimeout(resolve, pauseMs))
          if (kill !== null) workers.alive[kill]?.terminate()
        }
        const doc = chainAt(all.at(-1)?.thresholdDb ?? 0)
        expect(await last).toEqual(evidenceHere(take, comparisonOf(doc, { kind: 'chain' })))
      }),
      { seed: SEED, numRuns: 6, endOnFailure: true },
    )
  })
})
