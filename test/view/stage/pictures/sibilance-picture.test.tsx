import { act, cleanup, screen } from '@testing-library/react'
import { afterEach, describe, expect, it } from 'vitest'
import type { SideEvidence, StageEvidence } from '../../../../src/compute/evidence'
import { longTermSpectrum, loudnessOverTime, measure, peakPyramid, type Sound } from '../../../../src/core'
import { setSetting } from '../../../../src/session/chain/chain-edits'
import { SelectedStage } from '../../../../src/view/stage/selected-stage'
import { showInApp } from '../../chain/in-app'

afterEach(cleanup)

const sound: Sound = {
  sampleRate: 48_000,
  channels: [Float32Array.from({ length: 48_000 }, (_, n) => 0.1 * Math.sin(n / 8))],
}

const side: SideEvidence = {
  measures: measure(sound),
  loudness: loudnessOverTime(sound),
  peaks: peakPyramid(sound),
  spectrum: longTermSpectrum(sound),
}

/** The de-esser, selected, with this much gain reduction at most. */
function showReduced(maxDb: number) {
  const app = showInApp(<SelectedStage />)
  const { chain } = app.chain.getState()
  const held: StageEvidence = {
    integratedLufs: -20,
    loudnessChangeLu: 0,
    reduction: { maxDb, medianDb: maxDb },
    trace: null,
  }
  act(() => {
    app.chain.getState().select('sibilance')
    app.evidence.setState({
      evidence: {
        bypassed: side,
        processed: side,
        stages: new Map([['sibilance', held]]),
        matching: { bypassedDb: 0, processedDb: 0, measuredOver: 'take' },
        chains: { bypassed: chain, processed: chain },
      },
    })
  })
  return app
}

const label = () => screen.getByRole('img').getAttribute('aria-label')

describe('the picture of a de-esser', () => {
  it('says how far the loudest sibilance stands above the threshold', () => {
    showReduced(10)
    // −29 dBFS, 6:1, hard knee: 10 dB of gain reduction 12 dB above the threshold.
    expect(label()).toContain('exceeds −29 dBFS, and reaches −17 dBFS')
    expect(screen.getByText('loudest −17')).toBeDefined()
    expect(screen.getByText(/^Tinted: above the threshold/)).toBeDefined()
  })

  it('says that there may be more where the range ended', () => {
    showReduced(18)
    expect(label()).toContain('and exceeds −7.4 dBFS')
  })

  it('leaves the loudest level where it is while the threshold moves', () => {
    const app = showReduced(10)
    act(() => app.chain.getState().edit(setSetting('sibilance', 'thresholdDb', -40)))
    expect(label()).toContain('exceeds −40 dBFS, and reaches −17 dBFS')
    act(() => app.chain.getState().edit(setSetting('sibilance', 'thresholdDb', -10)))
    expect(screen.getByText(/^Nothing exceeds the threshold/)).toBeDefined()
  })

  it('says so where nothing exceeds the threshold', () => {
    showReduced(0)
    expect(label()).not.toContain('reaches')
    expect(screen.getByText(/^Nothing exceeds the threshold/)).toBeDefined()
  })
})
