import { act, cleanup, screen, within } from '@testing-library/react'
import { afterEach, describe, expect, it } from 'vitest'
import type { Evidence, SideEvidence } from '../../../src/compute/evidence/evidence'
import { longTermSpectrum, loudnessOverTime, measure, peakPyramid, type Sound } from '../../../src/core'
import { addStage } from '../../../src/session/chain-edits'
import { TheNumbers } from '../../../src/view/numbers/the-numbers'
import { showOnBench } from '../path/on-bench'

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
    showOnBench(<TheNumbers />)
    expect(screen.getAllByRole('row')).toHaveLength(9)
    expect(screen.getByRole('table', { name: /The whole chain against its bypass/ })).toBeDefined()
  })

  it('say whose stages the lanes tell of, where that is not the chain on the bench', () => {
    const bench = showOnBench(<TheNumbers />)
    const { chain } = bench.chain.getState()
    act(() => bench.listen.setState({ scope: { kind: 'kept', a: null, b: chain } }))
    expect(screen.getByRole('table').textContent).not.toContain('those of kept B')
    act(() => bench.chain.getState().edit(addStage('gain')))
    expect(screen.getByRole('table').textContent).toContain('figures of stages are those of kept B')
  })

  it('say where both sides are measured', () => {
    const bench = showOnBench(<TheNumbers />)
    const caption = () => screen.getByRole('table').textContent
    expect(caption()).toContain('against its bypass. Measured at its end.')
    act(() => bench.listening.setScope({ kind: 'stage', stageId: 'level' }))
    expect(caption()).toContain('all else as it is. Measured after all later stages.')
    act(() => bench.listening.setScope({ kind: 'stage', stageId: 'sibilance' }))
    expect(caption()).toContain('Measured at the end of the chain.')
    act(() => bench.listening.setScope({ kind: 'stage', stageId: 'clean-up' }))
    act(() => bench.listening.setEar('level'))
    expect(caption()).toContain('Measured after 3 Compressor, through those between.')
    act(() => bench.listening.setEar('clean-up'))
    expect(caption()).toContain('Measured after 1 Equaliser.')
  })

  it('show both sides, the difference and the matching, and what cannot be measured', () => {
    const bench = showOnBench(<TheNumbers />)
    const { chain } = bench.chain.getState()
    const evidence: Evidence = {
      without: sideOf(tone(0.1)),
      with: sideOf(tone(0.2)),
      stages: new Map(),
      matching: { withoutDb: 0, withDb: -6.02, measuredOver: 'take' },
      chains: { without: chain, with: chain },
    }
    act(() => bench.evidence.setState({ evidence, working: null }))
    const line = within(screen.getByRole('row', { name: /^Integrated/ })).getAllByRole('cell')
    // ITU-R BS.1770-5, Annex 1: a 0 dBFS sine of 997 Hz in one front channel reads -3.01 LKFS; 0.1 is 20 dB less.
    expect(line.map((cell) => cell.textContent)).toEqual(['−23.0', '−17.0', '+6.0'])
    expect(screen.getByRole('row', { name: /^Short-term max/ }).textContent).toContain('not measurable')
    expect(screen.getByRole('row', { name: /^Sibilance/ }).textContent).toContain('–no sibilants found')
    expect(screen.getByRole('table').textContent).toContain('; at sibilance: no sibilants found')
    expect(screen.getByRole('table').textContent).toContain(
      'matched over the take, without 0.0 dB, with −6.0 dB',
    )
    act(() =>
      bench.evidence.setState({
        evidence: { ...evidence, matching: { ...evidence.matching, measuredOver: 'loop' } },
      }),
    )
    expect(screen.getByRole('table').textContent).toContain('matched over the loop alone')
    expect(screen.getByText('of the whole take')).toBeDefined()
    act(() => bench.evidence.setState({ problem: 'The figures could not be worked out.' }))
    expect(screen.getByText('not up to date')).toBeDefined()
  })
})
