import fc from 'fast-check'
import { beforeEach, describe, expect, it, vi } from 'vitest'
import { nextTask } from '../../../src/compute/port/next-task'
import type { Sound } from '../../../src/core'
import { FileError } from '../../../src/files/file-error'
import { createTakeStore } from '../../../src/session/take/take-store'
import { Takes } from '../../../src/session/take/takes'

const sound: Sound = { sampleRate: 48_000, channels: [new Float32Array(64)] }

/** Every file being read, by name, with how to end it. Aborting does not end it: a decoder may not listen. */
const reading = vi.hoisted(() => new Map<string, { end(): void; fail(): void }>())

function read(
  name: string,
): Promise<{ name: string; sound: Sound; header: object; replacedSamples: number }> {
  return new Promise((resolve, reject) =>
    reading.set(name, {
      end: () => resolve({ name, sound, header: { container: 'WAV' }, replacedSamples: 0 }),
      fail: () => reject(new FileError('damaged', name, 'is damaged', 'Export it again.')),
    }),
  )
}
vi.mock('../../../src/files/decode', () => ({
  decodeFile: ({ name }: File) => read(name),
  decodeFileAtRate: ({ name }: File) => read(name),
}))
vi.mock('../../../src/session/take/load-demo', () => ({
  DemoError: class extends Error {},
  loadDemo: async () => {
    await read('the demo')
    return { title: 'The demo', vocal: sound, backing: sound }
  },
}))

let store: ReturnType<typeof createTakeStore>
let takes: Takes
const file = (name: string) => new File([], name)
const plainText = (text: string) => text.replace(/[\u2068\u2069]/g, '')
const problems = () => store.getState().problems.map(({ message }) => plainText(message))
const names = () => [store.getState().take?.name ?? null, store.getState().backing?.name ?? null]
async function end(name: string): Promise<void> {
  reading.get(name)?.end()
  reading.delete(name)
  await nextTask()
}

const measuresNever = { takeHash: null, takeMarks: null, setTake: () => new Promise<never>(() => undefined) }

beforeEach(() => {
  reading.clear()
  store = createTakeStore()
  takes = new Takes(store, measuresNever, () => undefined)
})

describe('a backing that is opened while its take loads', () => {
  it('waits for the take, and both are in', async () => {
    void takes.openTake(file('own.wav'))
    await nextTask()
    void takes.openBacking(file('band.wav'))
    await nextTask()
    expect(store.getState().loading).toBe('own.wav')
    await end('own.wav')
    expect(store.getState().loading).toBe('band.wav')
    await end('band.wav')
    expect([names(), problems()]).toEqual([['own.wav', 'band.wav'], []])
  })

  it('waits for the demo, too, and replaces its backing', async () => {
    void takes.openDemo()
    await nextTask()
    void takes.openBacking(file('band.wav'))
    await end('the demo')
    await end('band.wav')
    expect([names(), problems()]).toEqual([['The demo', 'band.wav'], []])
  })

  it('is named where that take does not come in', async () => {
    void takes.openTake(file('own.wav'))
    void takes.openBacking(file('band.wav'))
    await nextTask()
    reading.get('own.wav')?.fail()
    await nextTask()
    expect(problems()).toEqual([
      '“own.wav” is damaged. Export it again.',
      '“band.wav” was not opened: loading “own.wav”, which it goes with, did not finish.',
    ])
  })
})

it('measuring that never ends keeps no backing from its take', async () => {
  void takes.openTogether({ take: file('own.wav'), backing: file('band.wav'), unused: [] })
  await nextTask()
  await end('own.wav')
  await end('band.wav')
  expect([names(), store.getState().loading]).toEqual([['own.wav', 'band.wav'], null])
})

it('another file of the same name has an answer of its own', async () => {
  const first = takes.openTake(new File(['a'], 'Take 1.wav'))
  await nextTask()
  const second = takes.openTake(new File(['other'], 'Take 1.wav'))
  await nextTask()
  await end('Take 1.wav')
  expect(await Promise.all([first, second])).toEqual(['superseded', 'in'])
  expect(problems()).toEqual([
    '“Take 1.wav” was not opened: another file of that name was opened before it had loaded.',
  ])
})

it('a backing being loaded does not come in once the backing is removed', async () => {
  void takes.openTake(file('own.wav'))
  await nextTask()
  await end('own.wav')
  void takes.openBacking(file('band.wav'))
  await nextTask()
  takes.removeBacking()
  await end('band.wav')
  expect(names()).toEqual(['own.wav', null])
  expect(problems()).toEqual(['“band.wav” was not opened: the backing was removed before it had loaded.'])
})

interface Step {
  readonly do: 'take' | 'backing' | 'both' | 'demo' | 'cancel' | 'end' | 'fail'
  /** Which of the files being read ends or fails. */
  readonly which: number
}

const step: fc.Arbitrary<Step> = fc.record({
  do: fc.constantFrom('take', 'backing', 'both', 'demo', 'cancel', 'end', 'end', 'end', 'fail', 'fail'),
  which: fc.nat(9),
})

/** Requests made at random, with what became of each. */
class Requests {
  /** Endings by request; empty while there is none. Requests are called "take 0", "backing 1", "demo 2". */
  readonly endings = new Map<string, string[]>()
  /** What came in, in order, each with the requests that had been made by then. */
  readonly came: { readonly name: string; readonly madeBefore: readonly string[] }[] = []

  constructor() {
    reading.clear()
    store = createTakeStore()
    takes = new Takes(store, measuresNever, () => undefined)
    store.subscribe((now, before) => {
      const madeBefore = [...this.endings.keys()]
      if (now.take && now.take !== before.take) this.came.push({ name: now.take.name, madeBefore })
      if (now.backing && now.backing !== before.backing && !now.backing.ofDemo)
        this.came.push({ name: now.backing.name, madeBefore })
    })
  }

  make(one: Step): void {
    if (one.do === 'take') this.note([this.file('take')], ([take]) => takes.openTake(take))
    else if (one.do === 'backing')
      this.note([this.file('backing')], ([backing]) => takes.openBacking(backing))
    else if (one.do === 'both') {
      // Two requests, made one behind the other.
      this.note([this.file('take')], ([take]) => takes.openTake(take))
      this.note([this.file('backing')], ([backing]) => takes.openBacking(backing))
    } else if (one.do === 'demo') this.note([this.file('demo')], () => takes.openDemo())
    else if (one.do === 'cancel') takes.cancel()
    else if (one.do === 'end' || one.do === 'fail') {
      const name = [...reading.keys()][one.which % Math.max(1, reading.size)]
      if (name === undefined) return
      reading.get(name)?.[one.do]()
      reading.delete(name)
    }
  }

  private file(kind: string): File {
    return file(`${kind} ${this.endings.size}`)
  }

  private note([asked]: readonly [File], open: (asked: readonly [File]) => Promise<string>): void {
    const endings: string[] = []
    this.endings.set(asked.name, endings)
    void open([asked]).then((ending) => endings.push(ending))
  }
}

it('every request has one answer, and nothing comes in behind what was asked for later', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 14 }), async (steps) => {
      const requests = new Requests()
      for (const one of steps) {
        requests.make(one)
        await nextTask()
      }
      const { loading } = store.getState()
      // What never ends has no answer until it is stopped; nothing else is without one.
      const open = [...requests.endings].filter(([, endings]) => endings.length === 0)
      expect(open.length > 0).toBe(loading !== null)
      takes.cancel()
      await nextTask()
      for (const [name, endings] of requests.endings) {
        expect({ name, endings }).toEqual({ name, endings: [expect.any(String)] })
        if (name.startsWith('demo')) continue
        const messages = problems().filter((message) => message.startsWith(`“${name}”`))
        const arrivals = requests.came.filter((one) => one.name === name)
        const told = { messages: messages.length, arrivals: arrivals.length }
        const isIn = endings[0] === 'in'
        expect({ name, ...told }).toEqual({
          name,
          messages: isIn || endings[0] === 'stopped' ? 0 : 1,
          arrivals: isIn ? 1 : 0,
        })
      }
      for (const { name, madeBefore } of requests.came) {
        const later = madeBefore.slice(madeBefore.indexOf(name) + 1)
        const beats = name.startsWith('backing')
          ? later
          : later.filter((other) => !other.startsWith('backing'))
        if (name !== 'The demo') expect({ name, beats }).toEqual({ name, beats: [] })
      }
      // The newest take that could be read is there.
      const ins = [...requests.endings].filter(([name, [ending]]) => ending === 'in' && !name.startsWith('b'))
      const newest = ins.at(-1)?.[0]
      if (newest) expect(names()[0]).toBe(newest.startsWith('demo') ? 'The demo' : newest)
    }),
    { numRuns: 200 },
  )
})
