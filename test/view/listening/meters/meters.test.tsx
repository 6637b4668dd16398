import { act, cleanup, screen } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { App } from '../../../../src/session/app'
import { isLimited, PeakHold } from '../../../../src/view/listening/meters/meter-geometry'
import { Meters } from '../../../../src/view/listening/meters/meters'
import { showOnPage } from '../../keys/on-page'

let app: App
beforeEach(() => {
  vi.useFakeTimers()
  app = showOnPage(<Meters />).app
})
afterEach(() => {
  cleanup()
  vi.useRealTimers()
})

/** What the audio thread reports, and a moment for the figures to follow. */
const report = (outputPeakDb: number, stageGainsDb: readonly number[]) =>
  act(() => {
    app.listen.setState({ playing: true, outputPeakDb, stageGainsDb, momentaryLufs: -20 })
    vi.advanceTimersByTime(250)
  })

/** Share of the output meter that is filled, and where its peak is held. */
const output = () => {
  const [bar, hold] = screen.getByTitle(/^At the output/).nextElementSibling?.children ?? []
  if (!(bar instanceof HTMLElement) || !(hold instanceof HTMLElement)) throw new Error('no meter')
  return { filled: Number.parseFloat(bar.style.scale || '0'), held: hold.style.insetInlineStart }
}

describe('the meters', () => {
  it('fill with the peak at the output, hold the highest for a while, and are empty at rest', () => {
    expect(output()).toEqual({ filled: 0, held: '' })
    report(-12, [0, -3.2])
    expect(output()).toEqual({ filled: 0.75, held: '75%' })
    expect(screen.getByText('−12 dBFS, −20 LUFS')).toBeDefined()
    expect(screen.getByText('reduction 3.2 dB')).toBeDefined()
    report(-24, [0, 0])
    expect(output()).toEqual({ filled: 0.5, held: '75%' })
    act(() => vi.advanceTimersByTime(2000))
    report(-24.5, [0, 0])
    expect(output().held).toBe(`${100 * output().filled}%`)
    act(() => app.listen.setState({ playing: false }))
    expect(output()).toEqual({ filled: 0, held: '' })
  })

  it('say that a peak was limited', () => {
    report(-1, [])
    expect(screen.getByText('limited, −20 LUFS')).toBeDefined()
    expect([-1, -0.99].map(isLimited)).toEqual([true, true])
    expect(isLimited(-1.2)).toBe(false)
  })
})

describe('a held peak', () => {
  it('gives way to a higher one at once, to a lower one after a while', () => {
    const hold = new PeakHold()
    expect(hold.next(0.5, 0)).toBe(0.5)
    expect(hold.next(0.7, 10)).toBe(0.7)
    expect(hold.next(0.2, 1000)).toBe(0.7)
    expect(hold.next(0.2, 1600)).toBe(0.2)
    hold.clear()
    expect(hold.next(0.1, 1700)).toBe(0.1)
  })
})
