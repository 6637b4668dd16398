import { beforeEach, describe, expect, it, vi } from 'vitest'
import { ComputeError } from '../../../src/compute/compute-error'
import { nextTask } from '../../../src/compute/port/next-task'
import { measure, type Sound } from '../../../src/core'
import { FileError } from '../../../src/files/file-error'
import { createTakeStore } from '../../../src/session/take/take-store'
import { Takes } from '../../../src/session/take/takes'
import { eventually } from '../../setup/eventually'

const soundAt = (sampleRate: number): Sound => ({ sampleRate, channels: [new Float32Array(64)] })

// Files are read by a browser; here their names say their rate.
vi.mock('../../../src/files/decode', () => ({
  decodeFile: async ({ name }: File) => {
    if (name.startsWith('endless')) await new Promise(() => undefined)
    if (name.startsWith('broken')) throw new FileError('damaged', name, 'is damaged', 'Export it again.')
    return {
      name,
      sound: soundAt(Number.parseInt(name, 10)),
      header: { container: 'WAV' },
      replacedSamples: 0,
    }
  },
  decodeFileAtRate: async ({ name }: File, sampleRate: number) => ({ name, sound: soundAt(sampleRate) }),
}))
vi.mock('../../../src/session/take/load-demo', () => ({
  DemoError: class extends Error {},
  loadDemo: async () => ({ title: 'The demo', vocal: soundAt(48_000), backing: soundAt(48_000) }),
}))

const worker = { takeHash: null, takeMarks: null, setTake: async () => null }
const own = new File([], '48000 own.wav')
const otherRate = new File([], '44100 other.wav')
const band = new File([], 'band.wav')
const broken = new File([], 'broken.wav')

let store: ReturnType<typeof createTakeStore>
let takes: Takes
const names = () => {
  const { take, backing } = store.getState()
  return [take?.name ?? null, backing?.name ?? null]
}

/** What is told, without the marks around names. */
const problems = () => store.getState().problems.map(({ message }) => message.replace(/[\u2068\u2069]/g, ''))

beforeEach(async () => {
  store = createTakeStore()
  takes = new Takes(store, worker, () => undefined)
  await takes.openDemo()
})

describe('a take that is measured', () => {
  it('has the hash of its samples, by which a session document refers to it, and its marks', async () => {
    const measured = measure(soundAt(48_000))
    const marks = { sibilants: [], clipped: [{ from: 5, to: 9 }] }
    takes = new Takes(
      store,
      { takeHash: 'a hash', takeMarks: marks, setTake: async () => measured },
      () => undefined,
    )
    await takes.openTake(own)
    await eventually(() =>
      expect(store.getState().take).toMatchObject({ measures: measured, hash: 'a hash', marks }),
    )
  })
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
    expect(problems()).toEqual([])
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

describe('files opened together', () => {
  it('are the take and then its backing', async () => {
    await takes.openTogether({ take: own, backing: band, unused: [] })
    expect(names()).toEqual(['48000 own.wav', 'band.wav'])
    expect(problems()).toEqual([])
  })

  it('leave everything as it was when the take is damaged, and say so of both', async () => {
    await takes.openTogether({ take: broken, backing: band, unused: [] })
    expect(names()).toEqual(['The demo', 'The demo, backing'])
    expect(problems()).toEqual([
      '“broken.wav” is damaged. Export it again.',
      '“band.wav” was not opened: loading “broken.wav”, which it goes with, did not finish.',
    ])
  })

  it('leave the backing out when loading the take is stopped, and name it', async () => {
    const opening = takes.openTogether({ take: own, backing: band, unused: [] })
    takes.cancel()
    await opening
    expect(names()).toEqual(['The demo', 'The demo, backing'])
    expect(problems()).toEqual([
      '“band.wav” was not opened: loading “48000 own.wav”, which it goes with, did not finish.',
    ])
  })

  it('name what they have no use for', async () => {
    await takes.openTogether({ take: own, backing: band, unused: [otherRate, broken] })
    expect(names()).toEqual(['48000 own.wav', 'band.wav'])
    expect(problems()).toEqual([
      '“44100 other.wav” was not opened: one take and one backing can be opened at a time.',
      '“broken.wav” was not opened: one take and one backing can be opened at a time.',
    ])
  })
})

describe('problems', () => {
  it('stand side by side until each is dismissed', async () => {
    const worse = new File([], 'broken too.wav')
    await takes.openTake(broken)
    await takes.openTake(worse)
    await takes.openTake(own)
    expect(problems()).toEqual([
      '“broken.wav” is damaged. Export it again.',
      '“broken too.wav” is damaged. Export it again.',
    ])
    const [first] = store.getState().problems
    if (first) takes.dismissProblem(first)
    expect(problems()).toEqual(['“broken too.wav” is damaged. Export it again.'])
  })

  it('go when the file they are about is opened once more, and come once when it fails again', async () => {
    await takes.openTake(broken)
    const again = takes.openTake(broken)
    expect(problems()).toEqual([])
    await again
    expect(problems()).toEqual(['“broken.wav” is damaged. Export it again.'])
  })

  it('name a file that another was chosen ahead of, but not the demo', async () => {
    void takes.openDemo()
    void takes.openTake(new File([], 'endless.wav'))
    await nextTask()
    await takes.openTake(own)
    expect(names()).toEqual(['48000 own.wav', null])
    expect(problems()).toEqual([
      '“endless.wav” was not opened: “48000 own.wav” was opened before it had loaded.',
    ])
  })

  it('name a backing that there is no take for', async () => {
    store.setState({ take: null, backing: null })
    await takes.openBacking(band)
    expect(problems()).toEqual(['“band.wav” was not opened: a backing needs a take. Open a take first.'])
  })
})

describe('a take that cannot be measured', () => {
  it('is open all the same, with its backing, and that is what is said', async () => {
    const setTake = async () => {
      throw new ComputeError('stopped', 'the work stopped several times without an answer.')
    }
    takes = new Takes(store, { takeHash: null, takeMarks: null, setTake }, () => undefined)
    await takes.openTogether({ take: own, backing: band, unused: [] })
    expect(names()).toEqual(['48000 own.wav', 'band.wav'])
    expect(problems()).toEqual([
      '“48000 own.wav” is open, but it could not be measured: the work stopped several times without an answer. You can play it; open it again to have it measured.',
    ])
  })
})
