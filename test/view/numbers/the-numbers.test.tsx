import { act, cleanup, screen, within } from '@testing-library/react'
import { afterEach, describe, expect, it } from 'vitest'
import type { Evidence, SideEvidence } from '../../../src/compute/evidence'
import { longTermSpectrum, loudnessOverTime, measure, peakPyramid, type Sound } from '../../../src/core'
import { addStage } from '../../../src/session/chain/chain-edits'
import { TheNumbers } from '../../../src/view/numbers/the-numbers'
import { showInApp } from '../chain/in-app'

afterEach(cleanup)

const RATE = 48_000

function tone(amplitude: number): Sound {
  const samples = Float32Array.from(
    { length: RATE },
    (_, n) => amplitude * Math.sin((2 * Math.PI * 997 * n) / RATE),
  )
  return { sampleRate: RATE, channels: [samples] }
}

function sideOf(sound: Sound): SideEvidence {
  return {
    measures: measure(sound),
    loudness: loudnessOverTime(sound),
    peaks: peakPyramid(sound),
    spectrum: longTermSpectrum(sound),
  }
}

describe('the numbers', () => {
  it('hold their places before anything is known, and say what will be compared', () => {
    showInApp(<TheNumbers />)
    expect(screen.getAllByRole('row')).toHaveLength(9)
    expect(screen.getByRole('table', { name: /The whole chain against its bypass/ })).toBeDefined()
  })

  it('say whose stages the lanes tell of, where that is not the chain on the bench', () => {
    const app = showInApp(<TheNumbers />)
    const { chain } = app.chain.getState()
    act(() => app.listen.setState({ scope: { kind: 'snapshots', a: null, b: { name: '', chain } } }))
    expect(screen.getByRole('table').textContent).not.toContain('those of B')
    act(() => app.chain.getState().edit(addStage('gain')))
    expect(screen.getByRole('table').textContent).toContain('figures of stages are those of B')
  })

  it('say where both sides are measured', () => {
    const app = showInApp(<TheNumbers />)
    const caption = () => screen.getByRole('table').textContent
    expect(caption()).toContain('against its bypass. Measured at its end.')
    act(() => app.listening.setScope({ kind: 'stage', stageId: 'level' }))
    expect(caption()).toContain('everything else is unchanged. Measured after all later stages.')
    act(() => app.listening.setScope({ kind: 'stage', stageId: 'sibilance' }))
    expect(caption()).toContain('Measured at the end of the chain.')
    act(() => app.listening.setScope({ kind: 'stage', stageId: 'clean-up' }))
    act(() => app.listening.setListeningPoint('level'))
    expect(caption()).toContain('Measured after 3 Compressor, through the stages between.')
    act(() => app.listening.setListeningPoint('clean-up'))
    expect(caption()).toContain('Measured after 1 Equaliser.')
  })

  it('show both sides, the difference and the matching, and what cannot be measured', () => {
    const app = showInApp(<TheNumbers />)
    const { chain } = app.chain.getState()
    const evidence: Evidence = {
      bypassed: sideOf(tone(0.1)),
      processed: sideOf(tone(0.2)),
      stages: new Map(),
      matching: { bypassedDb: 0, processedDb: -6.02, measuredOver: 'take' },
      chains: { bypassed: chain, processed: chain },
    }
    act(() => app.evidence.setState({ evidence, working: null }))
    const line = within(screen.getByRole('row', { name: /^Integrated/ })).getAllByRole('cell')
    // ITU-R BS.1770-5, Annex 1: a 0 dBFS sine of 997 Hz in one front channel reads -3.01 LKFS; 0.1 is 20 dB less.
    expect(line.map((cell) => cell.textContent)).toEqual(['−23.0', '−17.0', '+6.0'])
    expect(screen.getByRole('row', { name: /^Short-term max/ }).textContent).toContain('not measurable')
    expect(screen.getByRole('row', { name: /^Sibilance/ }).textContent).toContain('–no sibilants found')
    expect(screen.getByRole('table').textContent).toContain('; at sibilance: no sibilants found')
    expect(screen.getByRole('table').textContent).toContain(
      'played matched over the take: without 0 dB, with −6 dB',
    )
    act(() =>
      app.evidence.setState({
        evidence: { ...evidence, matching: { ...evidence.matching, measuredOver: 'loop' } },
      }),
    )
    expect(screen.getByRole('table').textContent).toContain('matched over the loop:')
    expect(screen.getByText('of the whole take')).toBeDefined()
    act(() => app.evidence.setState({ problem: 'The figures could not be worked out.' }))
    expect(screen.getByText('not up to date')).toBeDefined()
  })
})
