import { act, cleanup, screen } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { ThePath } from '../../../src/view/path/the-path'
import { showOnBench } from './on-bench'

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  cleanup()
  vi.useRealTimers()
})

describe('gain reduction now', () => {
  it('stands at each stage that reduces gain, and says the most of the last quarter of a second', () => {
    const bench = showOnBench(<ThePath />)
    const meters = screen.getAllByRole('meter')
    expect(meters.map((meter) => meter.getAttribute('aria-label'))).toEqual([
      '3 Compressor, gain reduction now',
      '4 De-esser, gain reduction now',
    ])
    expect(meters[0]?.getAttribute('aria-valuetext')).toBe('not playing')
    act(() => {
      bench.listen.setState({ playing: true, stageGainsDb: [0, 0, -6.24, 0] })
      bench.listen.setState({ stageGainsDb: [0, 0, -1, 0] })
      vi.advanceTimersByTime(250)
    })
    expect(meters[0]?.parentElement?.textContent).toBe('now 6.2 dB')
    expect(meters[0]?.getAttribute('value')).toBe('6.2')
    expect(meters[1]?.parentElement?.textContent).toBe('now 0.0 dB')
    act(() => {
      bench.listen.setState({ playing: false })
      vi.advanceTimersByTime(250)
    })
    expect(meters[0]?.parentElement?.textContent).toBe('')
  })
})
