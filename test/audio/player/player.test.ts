import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Report } from '../../../src/audio/engine/messages'
import { Player } from '../../../src/audio/player/player'
import type { PlayerError } from '../../../src/audio/player/player-error'
import { chainOf } from '../../../src/core'
import { listenTo } from '../../setup/engine'
import { type FakeOutput, fakeOutput } from './fake-output'

const RATE = 48_000
/** What a wired output adds to what the context buffers, as `heard-position.ts` has it. */
const TYPICAL_OUTPUT_SECONDS = 0.032
const take = { sampleRate: RATE, channels: [new Float32Array(10 * RATE)] }

let output: FakeOutput
let player: Player
let reports: Report[]
let errors: PlayerError[]

/** Lets promises settle and time pass. */
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms)
const newest = () => {
  const context = output.contexts.at(-1)
  if (!context) throw new Error('no context was made')
  return context
}
const plays = () => newest().sent.flatMap((message) => (message.type === 'play' ? [message] : []))

async function start(frame = 0): Promise<void> {
  const playing = player.play(frame)
  await pass(0)
  await playing
}

beforeEach(async () => {
  vi.useFakeTimers()
  output = fakeOutput()
  reports = []
  errors = []
  player = new Player({
    onReport: (report) => reports.push(report),
    onError: (error) => errors.push(error),
  })
  player.load(take, null, listenTo(chainOf([])))
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('Player', () => {
  it('makes no context before the first press of play, and one at the rate of the take then', async () => {
    expect(output.contexts).toHaveLength(0)
    await start(480)
    expect(newest().sampleRate).toBe(RATE)
    expect(plays()).toMatchObject([{ fromFrame: 480 }])
  })

  it('gives the audio thread the whole take, in parts, before it plays', async () => {
    const frames = 2 ** 21 + 5
    const long = { sampleRate: RATE, channels: [Float32Array.from({ length: frames }, (_, n) => n % 1000)] }
    player.load(long, null, listenTo(chainOf([])))
    await start()
    const { sent } = newest()
    expect(sent.slice(-3).map(({ type }) => type)).toEqual(['backing', 'loop', 'play'])
    const parts = sent.slice(0, -3).flatMap((message) => (message.type === 'take-part' ? [message] : []))
    expect(parts).toHaveLength(3)
    const given = new Float32Array(frames)
    for (const { fromFrame, channels } of parts) given.set(channels[0] ?? [], fromFrame)
    expect(given).toEqual(long.channels[0])
    expect(parts.map(({ channels }) => channels[0]?.buffer)).not.toContain(long.channels[0]?.buffer)
  })

  it('says to press play once more where the browser does not let sound start, and does so then', async () => {
    output.letsSoundStart = false
    const blocked = expect(player.play(0)).rejects.toMatchObject({ name: 'PlayerError', code: 'blocked' })
    await pass(3000)
    await blocked
    output.letsSoundStart = true
    await start()
    expect(plays()).toHaveLength(1)
  })

  it('does not play when it was stopped while the output was still being made', async () => {
    const playing = player.play(0)
    player.stop()
    await pass(10)
    await playing
    expect(plays()).toHaveLength(0)
  })

  it('plays at the next press when the output went, and play was stopped, while it was still being made', async () => {
    output.letsSoundStart = false
    const playing = player.play(0)
    player.stop()
    await pass(3000)
    await playing
    expect(newest().state).toBe('closed')
    output.letsSoundStart = true
    await start(480)
    expect(plays()).toMatchObject([{ fromFrame: 480 }])
  })

  it('says nothing when the output goes while nothing plays, and makes another for the next play', async () => {
    await start()
    player.stop()
    newest().go('suspended')
    await pass(0)
    expect(errors).toEqual([])
    await start()
    expect(output.contexts).toHaveLength(2)
  })

  it('tells the place that reaches the ear: the engine, less what is on its way to the output', async () => {
    await start(RATE)
    newest().baseLatency = 0.1 - TYPICAL_OUTPUT_SECONDS
    const { request = 0 } = plays()[0] ?? {}
    for (const positionFrame of [RATE + 100, 2 * RATE]) output.report({ request, positionFrame })
    // At first nothing is heard yet: it stands at its start.
    expect(reports.map(({ positionFrame }) => positionFrame)).toEqual([RATE, 2 * RATE - 4800])
  })

  it('tells the end of the loop, not what lies before it, right after the loop came round', async () => {
    player.setLoop({ from: RATE, to: 3 * RATE })
    await start(RATE)
    newest().baseLatency = 0.1 - TYPICAL_OUTPUT_SECONDS
    const { request = 0 } = plays()[0] ?? {}
    for (const positionFrame of [2.9 * RATE, RATE + 480, RATE + 9600])
      output.report({ request, positionFrame })
    expect(reports.map(({ positionFrame }) => positionFrame)).toEqual([
      2.8 * RATE,
      3 * RATE - 4320,
      RATE + 4800,
    ])
  })

  it('drops reports of where it played before it was sent elsewhere', async () => {
    await start(0)
    const before = { request: plays()[0]?.request ?? 0, positionFrame: 5000 }
    await start(RATE)
    output.report(before)
    expect(reports).toEqual([])
  })

  it('is not disturbed by an output that was still being opened for the take before', async () => {
    output.moduleMs = 300
    const first = player.play(0)
    await pass(100)
    player.load({ ...take }, null, listenTo(chainOf([])))
    await pass(50)
    const second = player.play(480)
    await pass(5000)
    await Promise.all([first, second])
    expect(output.contexts.map(({ state }) => state)).toEqual(['closed', 'running'])
    expect(output.contexts.map(({ sent }) => sent.some(({ type }) => type === 'play'))).toEqual([false, true])
    expect(errors).toEqual([])
  })

  it('hears no more of an output that it has closed', async () => {
    await start()
    const [old] = output.contexts
    player.load({ ...take }, null, listenTo(chainOf([])))
    await start()
    output.report({ request: 0 })
    const told = reports.length
    old?.go('suspended')
    output.breakProcessor(0)
    output.report({ request: plays()[0]?.request ?? 0 }, 0)
    await pass(5000)
    expect(reports).toHaveLength(told)
    expect(errors).toEqual([])
    expect(newest().state).toBe('running')
  })
})

describe('an output that goes away', () => {
  const ways: readonly (readonly [string, () => void])[] = [
    ['is suspended by the system', () => newest().go('suspended')],
    ['is interrupted by the system', () => newest().go('interrupted')],
    ['loses its device', () => newest().dispatchEvent(new Event('error'))],
    ['breaks on the audio thread', () => output.breakProcessor()],
    ['stands still', () => newest().freeze()],
  ]
  const heardAt = (positionFrame: number) =>
    output.report({ request: plays()[0]?.request ?? 0, positionFrame })

  it.each(ways)(
    'because it %s is replaced once, without a word, and goes on where it was heard',
    async (_, lose) => {
      await start()
      await pass(5000)
      newest().baseLatency = 0.1 - TYPICAL_OUTPUT_SECONDS
      heardAt(3 * RATE)
      player.setLoop({ from: 0, to: 4 * RATE })
      await pass(0)
      lose()
      await pass(1500)
      expect(errors).toEqual([])
      expect(output.contexts.map(({ state }) => state)).toEqual(['closed', 'running'])
      expect(newest().sent.map(({ type }) => type)).toEqual(['take-part', 'backing', 'loop', 'play'])
      expect(plays()).toMatchObject([{ fromFrame: 2.9 * RATE }])
      heardAt(3.5 * RATE)
      expect(reports.at(-1)).toMatchObject({ positionFrame: 3.4 * RATE + 4800 - 1536 })
    },
  )

  it.each(ways)('because it %s is told of when its replacement goes, too', async (_, lose) => {
    await start()
    await pass(5000)
    lose()
    await pass(5000)
    lose()
    await pass(1500)
    expect(errors).toMatchObject([{ code: 'stopped', message: expect.stringContaining('Press play') }])
    expect(output.contexts.map(({ state }) => state)).toEqual(['closed', 'closed'])
    await start(960)
    expect(output.contexts).toHaveLength(3)
    expect(plays()).toMatchObject([{ fromFrame: 960 }])
  })

  it('is replaced again once its replacement has played for a while', async () => {
    await start()
    for (let losses = 0; losses < 3; losses++) {
      await pass(15_000)
      newest().go('suspended')
    }
    await pass(100)
    expect(errors).toEqual([])
    expect(output.contexts).toHaveLength(4)
  })

  it('is told of where no other can be opened', async () => {
    await start()
    output.letsSoundStart = false
    newest().go('suspended')
    await pass(10_000)
    expect(errors).toMatchObject([{ code: 'stopped', cause: { code: 'blocked' } }])
    expect(output.contexts.map(({ state }) => state)).toEqual(['closed', 'closed'])
  })

  it('does not play on by itself where it was stopped, or sent elsewhere, while another was opened', async () => {
    await start()
    output.moduleMs = 300
    newest().go('suspended')
    await pass(100)
    player.stop()
    await pass(1000)
    expect(plays()).toEqual([])
    newest().go('suspended')
    const playing = player.play(960)
    await pass(1000)
    await playing
    expect(plays()).toMatchObject([{ fromFrame: 960 }])
    expect(errors).toEqual([])
  })
})
