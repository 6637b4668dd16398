import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { watchOutput } from '../../../src/audio/player/output-watch'
import { FakeContext } from './fake-output'

let context: FakeContext
let losses: number
let watching: AbortController
/** How long the page was not run so far, on top of what its timers know. */
let notRunMs: number

/** The page runs for so long. */
const pass = (ms: number) => vi.advanceTimersByTimeAsync(ms)

/** Looks come so late, so many times, because the page is not run. */
async function starve(looks: number, lateMs: number): Promise<void> {
  for (let look = 0; look < looks; look++) {
    notRunMs += lateMs
    await pass(250)
  }
}

beforeEach(async () => {
  vi.useFakeTimers()
  notRunMs = 0
  const timersNow = performance.now.bind(performance)
  vi.spyOn(performance, 'now').mockImplementation(() => timersNow() + notRunMs)
  context = new FakeContext(48_000, true, 0)
  losses = 0
  watching = new AbortController()
  await context.resume()
  watchOutput(context, () => losses++, watching.signal)
})
afterEach(() => {
  watching.abort()
  vi.restoreAllMocks()
  vi.useRealTimers()
})

describe('watchOutput', () => {
  it('tells of a clock that stands still although the context says it runs, within a second and a half', async () => {
    await pass(5000)
    context.freeze()
    await pass(700)
    expect(losses).toBe(0)
    await pass(800)
    expect(losses).toBe(1)
  })

  it('gives sound three seconds to start, also where the clock ran a little before', async () => {
    await pass(200)
    context.freeze()
    await pass(2900)
    expect(losses).toBe(0)
    await pass(600)
    expect(losses).toBe(1)
  })

  it('takes no output for lost that takes sound in bursts, 1.4 s at a time; only one that stands for twice as long', async () => {
    for (let burst = 0; burst < 20; burst++) {
      context.freeze()
      await pass(1400)
      context.run()
      context.currentTime += 1.35
      await pass(50)
    }
    expect(losses).toBe(0)
    context.freeze()
    await pass(3300)
    expect(losses).toBe(1)
  })

  it('counts no time in which the page was not run: a starved machine, or one that was asleep', async () => {
    await pass(5000)
    context.freeze()
    await starve(40, 400)
    await starve(5, 60_000)
    expect(losses).toBe(0)
    // What goes on when the page runs again was only late; what stands still is lost.
    context.run()
    await pass(5000)
    expect(losses).toBe(0)
    context.freeze()
    await starve(3, 400)
    await pass(1600)
    expect(losses).toBe(1)
  })

  it('counts of looks a little late no more than the page ran for', async () => {
    await pass(5000)
    context.freeze()
    await starve(3, 200)
    expect(losses).toBe(0)
  })

  it('tells once, and nothing after it was ended', async () => {
    context.go('suspended')
    context.go('interrupted')
    context.dispatchEvent(new Event('error'))
    await pass(10_000)
    expect(losses).toBe(1)
    losses = 0
    const ended = new FakeContext(48_000, true, 0)
    await ended.resume()
    watchOutput(ended, () => losses++, watching.signal)
    watching.abort()
    ended.freeze()
    ended.go('suspended')
    await pass(10_000)
    expect(losses).toBe(0)
  })
})
