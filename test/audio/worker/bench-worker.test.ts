import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { StretchTrace } from '../../../src/audio/evidence/evidence'
import { BenchWorker } from '../../../src/audio/worker/bench-worker'
import type { FromWorker, ToWorker } from '../../../src/audio/worker/protocol'
import { type ChainDoc, chainOf, comparisonOf, measure, renderChain } from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { noise } from '../../setup/signals'

const RATE = 8000
const take = noise(RATE, 3, 1, 3, (at) => (at < 1 ? 0.5 : 0.1))
const LIVE = { from: 0, to: 3 * RATE }

/** Everything that has come from the worker. */
const come: FromWorker[] = []

/** Runs the worker's own module in this thread; messages are cloned and late, as between threads. */
class WorkerHere {
  onmessage: (event: { data: FromWorker }) => void = () => undefined
  private readonly scope = {
    onmessage: (_: { data: ToWorker }): void => undefined,
    postMessage: (message: FromWorker, transfer: ArrayBuffer[] = []) => {
      const data = structuredClone(message, { transfer })
      setTimeout(() => {
        come.push(data)
        this.onmessage({ data })
      }, 0)
    },
  }
  private readonly loaded: Promise<unknown>

  constructor() {
    vi.stubGlobal('self', this.scope)
    vi.resetModules()
    this.loaded = import('../../../src/audio/worker/bench.worker')
  }

  postMessage(message: ToWorker): void {
    const data = structuredClone(message)
    void this.loaded.then(() => setTimeout(() => this.scope.onmessage({ data }), 0))
  }
}

function chainAt(thresholdDb: number): ChainDoc {
  return chainOf([stageWith('compressor', { thresholdDb, ratio: 4 }, 'hold'), stageWith('gain', {}, 'level')])
}

let bench: BenchWorker
let live: StretchTrace[]
const ask = (thresholdDb: number) =>
  bench.evidence(
    { comparison: comparisonOf(chainAt(thresholdDb), { kind: 'chain' }), loop: null, live: LIVE },
    { onProgress: () => undefined, onLiveTrace: (trace) => live.push(trace) },
  )
const evidenceMessages = () => come.flatMap((m) => (m.type === 'evidence' ? [m.evidence] : []))

beforeEach(async () => {
  vi.stubGlobal('Worker', WorkerHere)
  come.length = 0
  live = []
  bench = new BenchWorker()
  expect(await bench.setTake(take)).toEqual(measure(take))
})

describe('asking the worker for evidence', () => {
  it('brings the traces first, then all of it', async () => {
    const evidence = await ask(-30)
    expect(come.map(({ type }) => type).filter((type) => type !== 'progress')).toEqual([
      'measured',
      'live-trace',
      'evidence',
    ])
    const { sound, traces } = renderChain(take, chainAt(-30))
    expect(live[0]?.gainDb).toEqual(traces.get('hold')?.gainDb)
    expect(evidence?.with.measures).toEqual(measure(sound))
    expect(evidence?.stages.get('hold')?.trace?.gainDb).toEqual(traces.get('hold')?.gainDb)
    expect(evidence?.chains.with).toEqual(chainAt(-30))
  })

  it('answers only the newest of many in full, and never stops the traces half way', async () => {
    const asked = [-20, -25, -30, -35].map(ask)
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
    expect(second?.without).toBe(first?.without)
    expect(second?.with).not.toBe(first?.with)
    const [without, withSide] = evidenceMessages().at(-1)?.sides ?? []
    expect(without?.value).toBeNull()
    expect(withSide?.value).not.toBeNull()
  })

  it('builds on evidence that came for a request given up meanwhile', async () => {
    const first = ask(-30)
    await vi.waitFor(() => expect(come.some(({ type }) => type === 'live-trace')).toBe(true))
    const second = ask(-36)
    expect(await first).toBeNull()
    expect((await second)?.without.measures).toEqual(measure(take))
  })

  it('tells no traces of a take that is gone', async () => {
    const old = ask(-30)
    const measured = bench.setTake(noise(RATE, 1, 1, 4, () => 0.2))
    expect(await old).toBeNull()
    await measured
    await new Promise((resolve) => setTimeout(resolve, 100))
    expect(live).toEqual([])
    expect(evidenceMessages()).toEqual([])
  })
})
