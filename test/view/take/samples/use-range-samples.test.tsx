import { act, cleanup, renderHook } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { MOST_SAMPLES } from '../../../../src/compute/jobs/samples-job'
import { chainOf, type FrameRange, frameCount } from '../../../../src/core'
import type { App } from '../../../../src/session/app'
import { setSetting } from '../../../../src/session/chain/chain-edits'
import { covers, type RangeSamples, rangeAround } from '../../../../src/session/take/range-samples'
import { AppProvider } from '../../../../src/view/context/app-context'
import { useRangeSamples } from '../../../../src/view/take/samples/use-range-samples'
import { stageWith } from '../../../setup/chains'
import { showInApp } from '../../chain/in-app'
import { sound, take } from '../../keys/on-page'
import { evidenceOf } from '../evidence-of'

const WIDTH = 1000
const NEAR = { from: 40_000, to: 41_000 }

/** What was asked for, and how to answer it. */
interface Asked {
  readonly range: FrameRange
  readonly signal: AbortSignal
  answer(samples: RangeSamples | null): void
}

let app: App
let asked: Asked[]

beforeEach(() => {
  vi.useFakeTimers()
  asked = []
  app = showInApp(null)
  vi.spyOn(app.compute, 'run').mockImplementation((_kind, inputOf, { signal }) => {
    const input: unknown = inputOf('hash')
    if (!hasRange(input) || !signal) throw new Error('no range was asked for')
    return new Promise((resolve) => asked.push({ range: input.range, signal, answer: resolve }))
  })
  app.take.setState({ take })
  const chain = chainOf([stageWith('gain', { gainDb: -6 }, 'level')])
  app.chain.getState().open({ chain, snapshots: { a: null, b: null }, selectedId: 'level' })
  app.evidence.setState({ evidence: evidenceOf(app, sound), working: null })
})
afterEach(() => {
  cleanup()
  vi.useRealTimers()
  vi.restoreAllMocks()
})

function hasRange(input: unknown): input is { readonly range: FrameRange } {
  return typeof input === 'object' && input !== null && 'range' in input
}

function show(view: FrameRange) {
  return renderHook(({ seen }) => useRangeSamples(seen, WIDTH), {
    initialProps: { seen: view },
    wrapper: ({ children }) => <AppProvider app={app}>{children}</AppProvider>,
  })
}
const rest = () => act(() => vi.advanceTimersByTime(500))
const samplesOf = ({ from, to }: FrameRange): RangeSamples => ({
  from,
  channels: [new Float32Array(to - from)],
})

describe('samples of what is seen', () => {
  it('are none where the finest peaks say as much', () => {
    const { result } = show({ from: 0, to: frameCount(sound) })
    rest()
    expect([result.current, asked.length]).toEqual([{ bypassed: null, processed: null }, 0])
  })

  it('are at once those of the take, where a side runs through no stage', () => {
    const { result } = show(NEAR)
    expect(result.current.bypassed).toEqual({ from: 0, channels: sound.channels })
    expect(result.current.bypassed?.channels[0]).toBe(sound.channels[0])
  })

  it('come from behind the stages once the view rests, with enough around them to move in', async () => {
    const { result, rerender } = show(NEAR)
    for (let by = 1; by < 5; by++) {
      act(() => vi.advanceTimersByTime(50))
      rerender({ seen: { from: NEAR.from + by, to: NEAR.to + by } })
    }
    expect(asked).toHaveLength(0)
    rest()
    const [first] = asked
    expect(asked.map(({ range }) => range)).toEqual([{ from: 39_004, to: 42_004 }])
    await act(async () => first?.answer(samplesOf(first.range)))
    expect(result.current.processed?.from).toBe(39_004)
    rerender({ seen: { from: 39_500, to: 40_500 } })
    rest()
    expect([asked.length, result.current.processed?.from]).toEqual([1, 39_004])
  })

  it('are given up when they are no longer seen, and asked for anew elsewhere', async () => {
    const { result, rerender, unmount } = show(NEAR)
    rest()
    rerender({ seen: { from: 1000, to: 2000 } })
    expect(asked[0]?.signal.aborted).toBe(true)
    await act(async () => asked[0]?.answer(samplesOf(NEAR)))
    expect(result.current.processed).toBeNull()
    rest()
    expect(asked).toHaveLength(2)
    unmount()
    expect(asked[1]?.signal.aborted).toBe(true)
  })

  it('stay until those of a changed chain have come', async () => {
    const { result } = show(NEAR)
    rest()
    await act(async () => asked[0]?.answer(samplesOf(asked[0].range)))
    const before = result.current.processed
    act(() => {
      app.chain.getState().edit(setSetting('level', 'gainDb', -3))
      app.evidence.setState({ evidence: evidenceOf(app, sound) })
    })
    expect(result.current.processed).toBe(before)
    rest()
    expect(asked).toHaveLength(2)
    await act(async () => asked[1]?.answer(samplesOf({ from: 39_000, to: 42_000 })))
    expect(result.current.processed).not.toBe(before)
  })
})

describe('the range around what is seen', () => {
  it('holds it, stays within the take, and is never longer than can be asked for', () => {
    const frames = 20 * 60 * 192_000
    for (const length of [1, 240.5, 5000, MOST_SAMPLES - 4])
      for (const from of [0, 0.5, frames / 3, frames - length]) {
        const seen = { from, to: from + length }
        const range = rangeAround(seen, frames)
        expect(range.to - range.from).toBeLessThanOrEqual(MOST_SAMPLES)
        expect([range.from >= 0, range.to <= frames]).toEqual([true, true])
        const samples = { from: range.from, channels: [new Float32Array(range.to - range.from)] }
        expect(covers(samples, seen, frames)).toBe(true)
      }
  })
})
