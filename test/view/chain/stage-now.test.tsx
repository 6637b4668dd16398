import { act, cleanup, screen } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { comparisonOf } from '../../../src/core'
import { setSetting } from '../../../src/session/chain/chain-edits'
import { TheChain } from '../../../src/view/chain/the-chain'
import { evidenceOf } from '../../session/trials/trial-app'
import { showOnPage } from '../keys/on-page'

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  cleanup()
  vi.useRealTimers()
})

describe('gain reduction now', () => {
  it('stands at each stage that reduces gain while it plays, and says the maximum of the last tenth of a second', () => {
    const app = showOnPage(<TheChain />).app
    expect(screen.queryAllByRole('meter')).toEqual([])
    act(() => {
      app.listen.setState({ playing: true, stageGainsDb: [0, 0, -6.24, 0] })
    })
    const meters = screen.getAllByRole('meter')
    expect(meters.map((meter) => meter.getAttribute('aria-label'))).toEqual([
      '3 Compressor, gain reduction now',
      '4 De-esser, gain reduction now',
    ])
    const report = (afterMs: number, gainDb: number) =>
      act(() => {
        vi.advanceTimersByTime(afterMs)
        app.listen.setState({ stageGainsDb: [0, 0, gainDb, 0] })
      })
    report(33, -1)
    expect(meters[0]?.parentElement?.parentElement?.textContent).toBe('6.2 dB')
    expect(meters[0]?.getAttribute('value')).toBe('6.24')
    expect(meters[1]?.parentElement?.parentElement?.textContent).toBe('0.0 dB')
    report(100, -2)
    expect(meters[0]?.parentElement?.parentElement?.textContent).toBe('2.0 dB')
    act(() => app.listen.setState({ playing: false }))
    expect(screen.queryAllByRole('meter')).toEqual([])
    expect(document.body.textContent).not.toContain('now ')
  })

  it('is the maximum over the take while nothing plays, or that there was none', () => {
    const { app } = showOnPage(<TheChain />)
    const measured = () => {
      const evidence = evidenceOf(comparisonOf(app.chain.getState().chain, { kind: 'chain' }))
      act(() => app.evidence.setState({ evidence }))
    }
    measured()
    expect(screen.getByText(/^max [1-9].* dB$/)).toBeDefined()
    app.chain.getState().edit(setSetting('level', 'thresholdDb', 0))
    app.chain.getState().edit(setSetting('sibilance', 'rangeDb', 0))
    measured()
    expect(screen.queryByText(/^max /)).toBeNull()
    expect(screen.getAllByText('no reduction')).toHaveLength(2)
  })
})
