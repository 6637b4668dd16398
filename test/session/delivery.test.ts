import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { Compute } from '../../src/compute/compute'
import { Pool } from '../../src/compute/pool/pool'
import { chainOf, renderChain, trimStage } from '../../src/core'
import { startingChain } from '../../src/demo'
import { saveBlob } from '../../src/files/save'
import { readWav } from '../../src/files/wav/wav-reader'
import { switchStage } from '../../src/session/chain/chain-edits'
import { createChainStore, wouldBeLost } from '../../src/session/chain/chain-store'
import { nameSnapshot } from '../../src/session/chain/name-snapshot'
import { NO_SNAPSHOTS, storeSnapshot } from '../../src/session/chain/snapshots'
import { Delivery, excessDb, formatNames } from '../../src/session/delivery'
import { createDeliveryStore, type FileLevels } from '../../src/session/delivery-store'
import { createTakeStore } from '../../src/session/take/take-store'
import { noise } from '../setup/signals'
import { WorkersHere } from '../setup/workers-here'
import { take } from './trials/trial-app'

vi.mock('../../src/files/save', async (original) => ({
  ...(await original<typeof import('../../src/files/save')>()),
  saveBlob: vi.fn(),
}))

const render = vi.fn<Compute['render']>()
const measures = vi.fn<Compute['measures']>()
const samplesOver = vi.fn<Compute['samplesOver']>()

type Worker = Pick<Compute, 'render' | 'measures' | 'samplesOver'>

function app(worker: Worker = { render, measures, samplesOver }) {
  const stores = {
    chain: createChainStore(startingChain()),
    take: createTakeStore(),
    delivery: createDeliveryStore(),
  }
  stores.take.setState({ take })
  return { ...stores, deliveries: new Delivery(stores, worker) }
}

/** The samples of the file saved last. */
async function savedSamples(): Promise<readonly Float32Array[]> {
  const [blob, fileName] = vi.mocked(saveBlob).mock.lastCall ?? []
  if (!blob || !fileName) throw new Error('nothing was saved')
  return readWav(new Uint8Array(await blob.arrayBuffer()), fileName).sound.channels
}

beforeEach(() => {
  render.mockResolvedValue(take.sound)
})
afterEach(() => vi.clearAllMocks())

describe('a delivery', () => {
  it('saves each format under a name of its own, in that format', async () => {
    const { deliveries } = app()
    for (const format of ['pcm24', 'pcm16', 'float32'] as const) {
      deliveries.setFormat(format)
      await deliveries.deliver()
    }
    const saved = vi.mocked(saveBlob).mock.calls
    expect(saved.map(([, fileName]) => fileName)).toEqual([
      'Take 3 - evenhand, 24-bit.wav',
      'Take 3 - evenhand, 16-bit.wav',
      'Take 3 - evenhand, 32-bit float.wav',
    ])
    for (const [blob, fileName] of saved) {
      const { facts } = readWav(new Uint8Array(await blob.arrayBuffer()), fileName)
      expect(fileName).toContain(
        `${8 * (facts.bytesPerSample ?? 0)}-bit${facts.coding === 'float' ? ' float' : ''}.`,
      )
    }
  })

  it('has the name of the version in the name of its file, which stays safe and below 255 bytes', async () => {
    const { deliveries, chain } = app()
    const nameOf = async () => {
      await deliveries.deliver()
      return vi.mocked(saveBlob).mock.lastCall?.[1] ?? ''
    }
    chain.getState().editVersions(storeSnapshot('a'))
    expect(await nameOf()).toBe('Take 3 - A, 24-bit.wav')
    chain.getState().editVersions(nameSnapshot('a', 'boosts first'))
    expect(await nameOf()).toBe('Take 3 - boosts first, 24-bit.wav')
    chain.getState().editVersions(storeSnapshot('b'))
    expect(await nameOf()).toBe('Take 3 - boosts first, 24-bit.wav')
    chain.getState().editVersions(nameSnapshot('a', '../.a/b: "c"'))
    expect(await nameOf()).toBe('Take 3 - -.a-b- -c-, 24-bit.wav')
    chain.getState().editVersions(nameSnapshot('a', '語'.repeat(40)))
    expect(new TextEncoder().encode(await nameOf()).length).toBeLessThanOrEqual(255 - 16)
    expect(await nameOf()).toMatch(/^Take 3 - 語+, 24-bit\.wav$/)
    chain.getState().edit(switchStage('level', false))
    expect(await nameOf()).toBe('Take 3 - evenhand, 24-bit.wav')
  })

  it('dithers 16-bit files: what is smaller than a step is still there', async () => {
    const samples = Float32Array.from({ length: 48_000 }, (_, n) => (0.4 * Math.sin(n / 7)) / 32768)
    render.mockResolvedValue({ sampleRate: 48_000, channels: [samples] })
    const { deliveries, delivery } = app()
    deliveries.setFormat('pcm16')
    await deliveries.deliver()
    const [saved] = await savedSamples()
    const overlap = saved?.reduce((sum, sample, n) => sum + sample * (samples[n] ?? 0), 0) ?? 0
    const power = samples.reduce((sum, sample) => sum + sample * sample, 0)
    expect(overlap / power).toBeCloseTo(1, 1)
    expect(delivery.getState().delivered?.isDithered).toBe(true)
  })

  it('gives the samples of a 16-bit take back in a 16-bit file, and of any take in 24 bits undithered', async () => {
    const steps = Float32Array.from({ length: 1000 }, (_, n) => (n * 65 - 32_500) / 32768)
    render.mockResolvedValue({ sampleRate: 48_000, channels: [steps] })
    const { deliveries, delivery } = app()
    for (const format of ['pcm16', 'pcm24'] as const) {
      deliveries.setFormat(format)
      await deliveries.deliver()
      expect(await savedSamples()).toEqual([steps])
      expect(delivery.getState().delivered?.isDithered).toBe(false)
    }
  })

  it('keeps the format it was begun with, whatever is chosen meanwhile', async () => {
    const { deliveries, delivery } = app()
    const done = deliveries.deliver()
    deliveries.setFormat('pcm16')
    await done
    expect(delivery.getState().delivered?.fileName).toContain(formatNames.pcm24)
    expect(vi.mocked(saveBlob).mock.calls).toHaveLength(1)
  })

  it('makes the chain it was made of safe, and not what was changed meanwhile', async () => {
    const { deliveries, chain } = app()
    const isLost = () => wouldBeLost(chain.getState())
    expect(isLost()).toBe(false)
    chain.getState().edit(switchStage('level', false))
    expect(isLost()).toBe(true)
    const done = deliveries.deliver()
    chain.getState().edit(switchStage('sibilance', false))
    await done
    expect(isLost()).toBe(true)
    chain.getState().undo()
    expect(isLost()).toBe(false)
    chain.getState().undo()
    expect(isLost()).toBe(true)
  })

  it('that fails says so, and saves nothing', async () => {
    render.mockRejectedValue(new Error('No memory.'))
    const { deliveries, delivery, chain } = app()
    chain.getState().edit(switchStage('level', false))
    await deliveries.deliver()
    expect(delivery.getState().problem).toBe(
      '“\u2068Take 3.wav\u2069” could not be delivered: No memory. The take and the chain are still here; try again.',
    )
    expect(saveBlob).not.toHaveBeenCalled()
    expect(wouldBeLost(chain.getState())).toBe(true)
  })
})

describe('a delivery of any length', () => {
  const workers = new WorkersHere()
  const pool = new Pool(workers.make, 2)
  const long = { ...take, sound: noise(8000, 120, 1, 3, () => 0.2) }
  let on: ReturnType<typeof app>

  beforeEach(async () => {
    // Every step takes so long that it is told of.
    let now = 0
    vi.spyOn(performance, 'now').mockImplementation(() => {
      now += 100
      return now
    })
    const compute = new Compute(pool)
    await compute.setTake(long.sound)
    on = app(compute)
    on.take.setState({ take: long })
  })
  afterEach(() => {
    pool.end()
    vi.restoreAllMocks()
  })

  const isUnderWay = () =>
    new Promise<void>((resolve) => {
      on.delivery.subscribe(({ working }) => working && resolve())
    })

  it('tells how far it has come, to its end', async () => {
    const shares: number[] = []
    on.delivery.subscribe(({ working }) => working !== null && shares.push(working))
    on.deliveries.setFormat('float32')
    await on.deliveries.deliver()
    expect(new Set(shares).size).toBeGreaterThan(3)
    expect(shares).toEqual(shares.toSorted((a, b) => a - b))
    expect(await savedSamples()).toEqual(renderChain(long.sound, startingChain()).sound.channels)
  })

  it('is given up at once when cancelled, saves nothing, and can be begun anew', async () => {
    const delivered = on.deliveries.deliver()
    await isUnderWay()
    on.deliveries.cancel()
    await delivered
    expect(on.delivery.getState()).toMatchObject({ working: null, delivered: null, problem: null })
    expect(saveBlob).not.toHaveBeenCalled()
    await on.deliveries.deliver()
    expect(on.delivery.getState().delivered).not.toBeNull()
  })

  it('can be left when it never answers', async () => {
    for (const worker of workers.alive) worker.isSilent = true
    const delivered = on.deliveries.deliver()
    on.deliveries.cancel()
    await delivered
    expect(on.delivery.getState()).toMatchObject({ working: null, problem: null })
  })
})

describe('what a file would hold', () => {
  const workers = new WorkersHere()
  const pool = new Pool(workers.make, 1)
  const loud = { ...take, sound: noise(8000, 4, 2, 9, () => 1.4) }
  /** Nothing but a gain, which does nothing yet. */
  const chainOfOne = chainOf([trimStage('out', 0)])
  let on: ReturnType<typeof app>

  beforeEach(async () => {
    const compute = new Compute(pool)
    await compute.setTake(loud.sound)
    on = app({
      measures: (...given) => compute.measures(...given),
      samplesOver: (...given) => compute.samplesOver(...given),
      render: (...given) => compute.render(...given),
    })
    on.take.setState({ take: loud })
    on.chain.getState().open({ chain: chainOfOne, snapshots: NO_SNAPSHOTS, selectedId: null })
  })
  afterEach(() => pool.end())

  const levels = () =>
    new Promise<FileLevels>((resolve) => {
      on.deliveries.measure()
      const stop = on.delivery.subscribe(({ levels }) => {
        if (!levels) return
        stop()
        resolve(levels)
      })
    })

  it('is known before it is saved: as many samples as the file then clips, and a true peak that goes once it is lowered', async () => {
    const { samplesOver, truePeakDbtp } = await levels()
    expect(samplesOver).toBeGreaterThan(1000)
    await on.deliveries.deliver()
    expect(on.delivery.getState().delivered?.clippedSamples).toBe(samplesOver)
    const byDb = excessDb(truePeakDbtp ?? 0)
    on.deliveries.lower(byDb)
    expect(on.chain.getState().past.at(-1)?.words).toBe(`output lowered by ${byDb} dB`)
    expect(on.chain.getState().chain.stages).toHaveLength(1)
    const after = await levels()
    expect(after.samplesOver).toBe(0)
    expect(after.truePeakDbtp).toBeLessThanOrEqual(0)
    expect(after.truePeakDbtp).toBeGreaterThan(-0.11)
    on.chain.getState().undo()
    expect((await levels()).samplesOver).toBe(samplesOver)
  })

  it('of float has no sample over', async () => {
    on.deliveries.setFormat('float32')
    expect(await levels()).toMatchObject({ samplesOver: 0 })
  })

  it('is not told where it was given up', async () => {
    const giveUp = on.deliveries.measure()
    giveUp()
    const { samplesOver } = await levels()
    expect(samplesOver).toBeGreaterThan(0)
    expect(on.delivery.getState().problem).toBeNull()
  })
})
