import { beforeEach, describe, expect, it, vi } from 'vitest'
import type { Sound } from '../../src/core'
import { createTakeStore } from '../../src/state/take-store'
import { Takes } from '../../src/state/takes'

const soundAt = (sampleRate: number): Sound => ({ sampleRate, channels: [new Float32Array(64)] })

// Files are read by a browser; here their names say their rate.
vi.mock('../../src/audio/files/decode', () => ({
  decodeFile: async ({ name }: File) => ({
    name,
    sound: soundAt(Number.parseInt(name, 10)),
    header: { container: 'WAV' },
    replacedSamples: 0,
  }),
  decodeFileAtRate: async ({ name }: File, sampleRate: number) => ({ name, sound: soundAt(sampleRate) }),
}))
vi.mock('../../src/state/load-demo', () => ({
  loadDemo: async () => ({ title: 'The demo', vocal: soundAt(48_000), backing: soundAt(48_000) }),
}))

const worker = { setTake: async () => null }
const own = new File([], '48000 own.wav')
const otherRate = new File([], '44100 other.wav')
const band = new File([], 'band.wav')

let store: ReturnType<typeof createTakeStore>
let takes: Takes
const names = () => {
  const { take, backing } = store.getState()
  return [take?.name ?? null, backing?.name ?? null]
}

beforeEach(async () => {
  store = createTakeStore()
  takes = new Takes(store, worker, () => undefined)
  await takes.openDemo()
})

describe('a take that takes the place of the demo', () => {
  it('does not get the backing of the demo', async () => {
    expect(names()).toEqual(['The demo', 'The demo, backing'])
    await takes.openTake(own)
    expect(names()).toEqual(['48000 own.wav', null])
  })

  it('keeps a backing that was opened, while the rate fits', async () => {
    await takes.openBacking(band)
    await takes.openTake(own)
    expect(names()).toEqual(['48000 own.wav', 'band.wav'])
    await takes.openTake(otherRate)
    expect(names()).toEqual(['44100 other.wav', null])
  })
})

describe('cancelling', () => {
  it('leaves the bench as it was, and is no problem', async () => {
    const opening = takes.openTake(own)
    expect(store.getState().loading).toBe(own.name)
    takes.cancel()
    expect(store.getState().loading).toBeNull()
    await opening
    expect(names()).toEqual(['The demo', 'The demo, backing'])
    expect(store.getState().problem).toBeNull()
  })
})

describe('the demo in the place of an own take', () => {
  beforeEach(async () => {
    await takes.openTake(own)
    await takes.openBacking(band)
    await takes.openDemo()
  })

  it('can be undone, with the backing, also after the demo was opened again', async () => {
    expect(names()).toEqual(['The demo', 'The demo, backing'])
    await takes.openDemo()
    await takes.bringBack()
    expect(names()).toEqual(['48000 own.wav', 'band.wav'])
    expect(store.getState().replaced).toBeNull()
  })

  it('lets go of it on request, and with the next take', async () => {
    takes.forgetReplaced()
    await takes.bringBack()
    expect(names()).toEqual(['The demo', 'The demo, backing'])
    await takes.openTake(own)
    await takes.openDemo()
    await takes.openTake(otherRate)
    expect(store.getState().replaced).toBeNull()
  })
})

it('has nothing to bring back when the demo follows the demo', async () => {
  await takes.openDemo()
  expect(store.getState().replaced).toBeNull()
})
