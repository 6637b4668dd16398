import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { Report } from '../../src/audio/engine/messages'
import { Player, type PlayerError } from '../../src/audio/player'
import { chainOf } from '../../src/core'
import { listenTo } from '../setup/engine'
import { type FakeOutput, fakeOutput } from './fake-output'

const RATE = 48_000
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
  await player.load(take, null, listenTo(chainOf([])))
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

  it.each(['suspended', 'interrupted'] as const)(
    'says to press play when the system makes it %s',
    async (state) => {
      await start()
      newest().go(state)
      await pass(0)
      expect(errors).toMatchObject([{ code: 'stopped', message: expect.stringContaining('Press play') }])
      expect(newest().state).toBe('closed')
      await start(960)
      expect(output.contexts).toHaveLength(2)
      expect(plays()).toMatchObject([{ fromFrame: 960 }])
    },
  )

  it('says so when the output device goes, and when the processor breaks', async () => {
    await start()
    newest().dispatchEvent(new Event('error'))
    await start()
    output.breakProcessor()
    expect(errors.map(({ code }) => code)).toEqual(['stopped', 'stopped'])
    await start()
    expect(plays()).toHaveLength(1)
  })

  it('notices a clock that stands still although the context says it runs, within a second', async () => {
    await start()
    await pass(5000)
    expect(errors).toEqual([])
    newest().freeze()
    await pass(1000)
    expect(errors).toHaveLength(1)
    expect(newest().state).toBe('closed')
  })

  it('says nothing about a page that was asleep', async () => {
    await start()
    newest().freeze()
    for (let looks = 0; looks < 5; looks++) {
      vi.setSystemTime(Date.now() + 60_000)
      vi.spyOn(performance, 'now').mockReturnValue(1e6 * (looks + 1))
      await pass(250)
    }
    expect(errors).toEqual([])
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
    newest().outputLatency = 0.1
    const { request = 0 } = plays()[0] ?? {}
    for (const positionFrame of [RATE + 100, 2 * RATE]) output.report({ request, positionFrame })
    // At first nothing is heard yet: it stands at its start.
    expect(reports.map(({ positionFrame }) => positionFrame)).toEqual([RATE, 2 * RATE - 4800])
  })

  it('tells the end of the loop, not what lies before it, right after the loop came round', async () => {
    player.setLoop({ from: RATE, to: 3 * RATE })
    await start(RATE)
    newest().outputLatency = 0.1
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
})
