import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { Compute } from '../../../src/compute/compute'
import { Pool } from '../../../src/compute/pool/pool'
import { SpectrogramTiles } from '../../../src/compute/spectrogram/spectrogram-tiles'
import { chainOf, renderChain, spectrogram, TILE_COLUMNS } from '../../../src/core'
import { stageWith } from '../../setup/chains'
import { noise } from '../../setup/signals'
import { WorkersHere } from '../../setup/workers-here'

const RATE = 8000
const take = noise(RATE, 20, 1, 3, (at) => (at < 1 ? 0.5 : 0.1))
const { stages } = chainOf([stageWith('gain', { gainDb: -6 }, 'level')])
const tile = (index: number) => ({ hopFrames: 128, index })

let workers: WorkersHere
let pool: Pool
let compute: Compute
let tiles: SpectrogramTiles
const asked = () =>
  workers.asked.flatMap((each) => (each.type === 'job' && each.kind === 'spectrogram' ? [each] : []))

beforeEach(async () => {
  workers = new WorkersHere()
  pool = new Pool(workers.make, 2)
  compute = new Compute(pool)
  tiles = new SpectrogramTiles(compute)
  await compute.setTake(take)
})
afterEach(() => {
  pool.end()
  workers.end()
})

describe('tiles of a spectrogram', () => {
  it('come one by one, and are known from then on without being asked for again', async () => {
    let come = 0
    await tiles.want([{ stages, tiles: [tile(0), tile(1)] }], () => void come++)
    expect(come).toBe(2)
    const rendered = renderChain(take, chainOf(stages)).sound
    const columns = { fromFrame: TILE_COLUMNS * 128, hopFrames: 128, count: TILE_COLUMNS }
    expect(tiles.get(stages, tile(1))).toEqual(spectrogram(rendered, columns))
    expect(tiles.get([], tile(1))).toBeUndefined()
    await tiles.want([{ stages, tiles: [tile(1), tile(0)] }], () => void come++)
    expect([come, asked().length]).toEqual([2, 1])
    // Whoever asks for the same sound gets them, whatever its stages are called.
    expect(
      new SpectrogramTiles(compute).get([stageWith('gain', { gainDb: -6 }, 'other')], tile(0)),
    ).toBeDefined()
  })

  it('are asked for once the view rests: of a view that moves on nothing is asked', async () => {
    const passed = [0, 1, 2].map((index) =>
      tiles.want([{ stages: [], tiles: [tile(index)] }], () => undefined),
    )
    await Promise.all(passed)
    expect(asked().map(({ input }) => input)).toMatchObject([{ tiles: [tile(2)] }])
    expect([0, 1, 2].map((index) => tiles.get([], tile(index)) !== undefined)).toEqual([false, false, true])
  })

  it('wait behind evidence, go on when they are asked for again, and are given up when they are left', async () => {
    const wanted = [{ stages, tiles: [tile(0)] }]
    const first = tiles.want(wanted, () => undefined)
    await tiles.want(wanted, () => undefined)
    await first
    expect(asked()).toHaveLength(1)
    expect(asked()[0]).toMatchObject({ priority: 'study' })
    const left = tiles.want([{ stages, tiles: [tile(1)] }], () => undefined)
    tiles.leave()
    await left
    expect(asked()).toHaveLength(1)
  })

  it('go with their take', async () => {
    await tiles.want([{ stages: [], tiles: [tile(0)] }], () => undefined)
    expect(compute.tiles.bytes).toBeGreaterThan(0)
    await compute.setTake(noise(RATE, 1, 1, 9, () => 0.1))
    expect(compute.tiles.bytes).toBe(0)
    expect(tiles.get([], tile(0))).toBeUndefined()
  })
})
