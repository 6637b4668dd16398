import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { StretchTrace } from '../../../src/compute/lanes/live-traces'
import { BenchWorker, WorkerError } from '../../../src/compute/worker/bench-worker'
import { PIECE_FRAMES } from '../../../src/compute/worker/tracer'
import { TRACER } from '../../../src/compute/worker/tracer-protocol'
import { type ChainDoc, chainOf, comparisonOf, measure, pausesOf, renderChain } from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { eventually } from '../../setup/eventually'
import { noise } from '../../setup/signals'
import { come, endWorkers, WorkerHere, whenCome, workers } from './worker-here'

const RATE = 8000
const take = noise(RATE, 3, 1, 3, (at) => (at < 1 ? 0.5 : 0.1))
const LIVE = { from: 0, to: 3 * RATE }

/** When the next trace comes, before anything else happens. */
function nextTrace(): Promise<void> {
  return new Promise((resolve) => {
    whenCome(({ type }) => type === 'live-traces' && resolve())
  })
}

function chainAt(thresholdDb: number): ChainDoc {
  return chainOf([stageWith('compressor', { thresholdDb, ratio: 4 }, 'hold'), stageWith('gain', {}, 'level')])
}

let app: BenchWorker
let live: StretchTrace[]
let tracesOver = 0
const askOf = (chain: ChainDoc, stretch = LIVE) =>
  app.evidence(
    { comparison: comparisonOf(chain, { kind: 'chain' }), loop: null, live: stretch },
    {
      onProgress: () => undefined,
      onLiveTraces: (traces) => live.push(...traces),
      onTracesOver: () => tracesOver++,
    },
  )
const ask = (thresholdDb: number, stretch = LIVE) => askOf(chainAt(thresholdDb), stretch)
const tracesCome = () => come.flatMap((m) => (m.type === 'live-traces' ? [m] : []))
const evidenceMessages = () => come.flatMap((m) => (m.type === 'evidence' ? [m.evidence] : []))

beforeEach(async () => {
  vi.stubGlobal('Worker', WorkerHere)
  vi.stubGlobal('navigator', { hardwareConcurrency: 1 })
  vi.restoreAllMocks()
  live = []
  tracesOver = 0
  app = new BenchWorker()
  expect(await app.setTake(take)).toEqual(measure(take))
})
afterEach(endWorkers)

describe('the workers that trace', () => {
  const names = () => workers.map(({ options }) => options.name)

  it('are started by the page, not before the first figures, of the one script there is', async () => {
    vi.stubGlobal('navigator', { hardwareConcurrency: 3 })
    expect(names()).toEqual([undefined])
    await app.evidence(
      { comparison: comparisonOf(chainAt(-30), { kind: 'chain' }), loop: null, live: null },
      { onProgress: () => undefined, onLiveTraces: () => undefined, onTracesOver: () => undefined },
    )
    expect(names()).toEqual([undefined, TRACER, TRACER, TRACER])
    expect(new Set(workers.map(({ url }) => url)).size).toBe(1)
    await ask(-36)
    expect(workers).toHaveLength(4)
  })

  it('are there for a hand that moves before the first figures are in', async () => {
    await ask(-30)
    expect(tracesCome()).toHaveLength(1)
  })

  it('are done without where they fail', async () => {
    vi.stubGlobal('navigator', { hardwareConcurrency: 2 })
    await ask(-30)
    for (const { options, onerror } of workers) if (options.name === TRACER) onerror()
    live = []
    const evidence = await ask(-36)
    expect(evidence?.chains.processed).toEqual(chainAt(-36))
    expect(live).toEqual([])
  })
})

describe('asking the worker for evidence', () => {
  it('brings the traces first, then all of it', async () => {
    const evidence = await ask(-30)
    expect(come.map(({ type }) => type).filter((type) => type !== 'progress')).toEqual([
      'measured',
      'live-traces',
      'traces-over',
      'evidence',
    ])
    expect(tracesOver).toBe(1)
    const { sound, traces } = renderChain(take, chainAt(-30))
    expect(live[0]?.gainDb).toEqual(traces.get('hold')?.gainDb)
    expect(evidence?.processed.measures).toEqual(measure(sound, { pauses: pausesOf(take) }))
    expect(evidence?.stages.get('hold')?.trace?.gainDb).toEqual(traces.get('hold')?.gainDb)
    expect(evidence?.chains.processed).toEqual(chainAt(-30))
  })

  it('answers only the newest of many in full, and never stops the traces half way', async () => {
    const asked = [-20, -25, -30, -35].map((thresholdDb) => ask(thresholdDb))
    const answers = await Promise.all(asked)
    expect(answers.map((answer) => answer === null)).toEqual([true, true, true, false])
    expect(evidenceMessages()).toHaveLength(1)
    const { traces } = renderChain(take, chainAt(-35))
    expect(live.at(-1)?.gainDb).toEqual(traces.get('hold')?.gainDb)
    expect(live.length).toBeGreaterThan(1)
  })

  it('sends nothing again of a side that is as it was', async () => {
    const first = await ask(-30)
    const second = await ask(-36)
    expect(second?.bypassed).toBe(first?.bypassed)
    expect(second?.processed).not.toBe(first?.processed)
    const [bypassed, processed] = evidenceMessages().at(-1)?.sides ?? []
    expect(bypassed?.value).toBeNull()
    expect(processed?.value).not.toBeNull()
  })

  it('builds on evidence that came for a request given up meanwhile', async () => {
    const first = ask(-30)
    await eventually(() => expect(come.some(({ type }) => type === 'live-traces')).toBe(true))
    const second = ask(-36)
    expect(await first).toBeNull()
    expect((await second)?.bypassed.measures).toEqual(measure(take))
  })

  it('gets the take as it is, which stays whole here', async () => {
    const asItIs = chainOf([])
    const there = await app.render(asItIs, () => undefined, new AbortController().signal)
    expect(there).toEqual(take)
    expect(take.channels[0]?.length).toBe(3 * RATE)
  })

  it('answers about a take what was asked while it was coming in, and gives up one that was overtaken', async () => {
    const [first, second] = [noise(RATE, 1, 2, 4, () => 0.2), noise(RATE, 1, 1, 5, () => 0.1)]
    const overtaken = app.setTake(first)
    const measured = app.setTake(second)
    const rendered = app.render(chainOf([]), () => undefined, new AbortController().signal)
    expect(await overtaken).toBeNull()
    expect(await measured).toEqual(measure(second))
    expect(await rendered).toEqual(second)
  })

  it('tells no traces of a take that is gone', async () => {
    const old = ask(-30)
    const measured = app.setTake(noise(RATE, 1, 1, 4, () => 0.2))
    expect(await old).toBeNull()
    await measured
    await new Promise((resolve) => setTimeout(resolve, 100))
    expect(live).toEqual([])
    expect(evidenceMessages()).toEqual([])
  })

  it('keeps its own of what it has sent', async () => {
    const first = await ask(-30)
    const louder = stageWith('gain', { gainDb: 3 }, 'level')
    const second = await askOf(chainOf([...chainAt(-30).stages.slice(0, 1), louder]))
    expect(second?.stages.get('hold')).toEqual(first?.stages.get('hold'))
    expect(second?.processed.measures).not.toEqual(first?.processed.measures)
  })

  it('works out nothing in full that was overtaken while it rested, however quick it would be', async () => {
    // Time stands still: whatever begins is done in one go.
    vi.spyOn(performance, 'now').mockReturnValue(0)
    const old = ask(-30)
    await nextTrace()
    const newer = ask(-36)
    expect(await old).toBeNull()
    expect((await newer)?.chains.processed).toEqual(chainAt(-36))
    expect(come.flatMap((m) => (m.type === 'evidence' ? [m.id] : []))).toHaveLength(1)
  })
})

describe('traces of a long stretch', () => {
  const LONG = noise(RATE, 80, 1, 3, (at) => 0.1 + 0.3 * Math.sin(at) ** 2)
  const WHOLE = { from: 0, to: 80 * RATE }
  const PIECES = Math.ceil(WHOLE.to / PIECE_FRAMES)

  beforeEach(async () => {
    await app.setTake(LONG)
    come.length = 0
    // Whatever happens takes longer than a slice of work: messages are handled between all steps.
    let now = 0
    vi.spyOn(performance, 'now').mockImplementation(() => {
      now += 100
      return now
    })
  })

  it('come in pieces; what is newer goes on with the next piece, and comes past all', async () => {
    void ask(-20, WHOLE)
    await nextTrace()
    void ask(-30, WHOLE)
    const [old] = tracesCome()
    const newer = () => tracesCome().filter(({ id }) => id !== old?.id)
    await eventually(() => expect(newer()).toHaveLength(PIECES))
    const older = tracesCome().filter(({ id }) => id === old?.id)
    expect(older.length).toBeLessThan(PIECES)
    const places = newer().map(({ traces }) => traces[0]?.firstHop)
    expect(places[0]).not.toBe(0)
    expect(new Set(places).size).toBe(PIECES)
    expect(older.at(-1)?.traces[0]?.firstHop).toBeLessThan(places[0] ?? 0)
    await app.setTake(take)
  })

  it('end with the take', async () => {
    void ask(-20, WHOLE)
    await nextTrace()
    await app.setTake(take)
    await new Promise((resolve) => setTimeout(resolve, 300))
    expect(tracesCome().length).toBeLessThan(PIECES)
  })
})

describe('a worker whose script does not load', () => {
  it('fails what waits for it, and all that is asked later', async () => {
    let failToLoad: () => void = () => undefined
    class NoWorker {
      onerror: () => void = () => undefined
      constructor() {
        failToLoad = () => this.onerror()
      }
      postMessage(): void {}
    }
    vi.stubGlobal('Worker', NoWorker)
    const dead = new BenchWorker()
    const waiting = dead.makeup(chainAt(-20), 'hold')
    failToLoad()
    await expect(waiting).rejects.toBeInstanceOf(WorkerError)
    await expect(dead.setTake(take)).rejects.toThrow(/could not be loaded/)
    await expect(dead.render(chainAt(-20), () => undefined, new AbortController().signal)).rejects.toThrow(
      WorkerError,
    )
  })

  it('is another thing than an error of one that works, which goes on', async () => {
    let raise: () => void = () => undefined
    class WorkerThatErrs extends WorkerHere {
      constructor(url: string, options: WorkerOptions) {
        super(url, options)
        if (options.name !== TRACER) raise = () => this.onerror()
      }
    }
    vi.stubGlobal('Worker', WorkerThatErrs)
    const working = new BenchWorker()
    await working.setTake(take)
    const waiting = working.makeup(chainAt(-20), 'hold')
    raise()
    await expect(waiting).rejects.toBeInstanceOf(WorkerError)
    expect(await working.makeup(chainAt(-20), 'hold')).not.toBeNull()
  })
})
