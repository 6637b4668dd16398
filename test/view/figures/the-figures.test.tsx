import { act, cleanup, screen, within } from '@testing-library/react'
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Evidence, LoopEvidence, SideEvidence } from '../../../src/compute/evidence'
import { longTermSpectrum, loudnessOverTime, measure, peakPyramid, type Sound } from '../../../src/core'
import type { App } from '../../../src/session/app'
import { addStage } from '../../../src/session/chain/chain-edits'
import { TheFigures } from '../../../src/view/figures/the-figures'
import { take } from '../../session/trials/trial-app'
import { showInApp } from '../chain/in-app'

afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
})

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

const reduction = { maxDb: 9.26, medianDb: 1.84 }

function evidenceIn(app: App): Evidence {
  const { chain } = app.chain.getState()
  return {
    bypassed: sideOf(tone(0.1)),
    processed: sideOf(tone(0.2)),
    stages: new Map([['level', { integratedLufs: -20, loudnessChangeLu: 0, reduction, trace: null }]]),
    matching: { bypassedDb: 0, processedDb: -6.02, measuredOver: 'take' },
    chains: { bypassed: chain, processed: chain },
  }
}

/** The app with figures of its take. */
function showWithFigures(): { app: App; evidence: Evidence } {
  const app = showInApp(<TheFigures />)
  const evidence = evidenceIn(app)
  act(() => app.take.setState({ take }))
  act(() => app.evidence.setState({ evidence, working: null }))
  return { app, evidence }
}

const caption = () => document.getElementById('figures-caption')?.textContent
const row = (name: RegExp) => screen.getByRole('row', { name })
const cells = (name: RegExp) => within(row(name)).getAllByRole('cell')
const texts = (name: RegExp) => cells(name).map(({ textContent }) => textContent)

describe('the figures', () => {
  it('hold their places before anything is known, and say what will be compared', () => {
    showInApp(<TheFigures />)
    // The head, eight figures, and a row for each stage that reduces gain.
    expect(screen.getAllByRole('row')).toHaveLength(11)
    expect(screen.getByRole('row', { name: /^4 De-esser, gain reduction/ })).toBeDefined()
    expect(
      screen.getByRole('table', { name: 'The whole chain against its bypass, whole take' }),
    ).toBeDefined()
  })

  it('say whose stages they tell of, where that is not the current chain', () => {
    const app = showInApp(<TheFigures />)
    const { chain } = app.chain.getState()
    act(() => app.listen.setState({ scope: { kind: 'snapshots', a: null, b: { name: '', chain } } }))
    expect(caption()).toBe('now against B, whole take')
    act(() => app.chain.getState().edit(addStage('gain')))
    expect(caption()).toContain('figures of stages are those of B')
  })

  it('say what is compared, up to which point, and where that is measured', () => {
    const app = showInApp(<TheFigures />)
    const place = () => screen.getByTitle(/^Measured/).title
    expect(place()).toBe('Measured at the end of the chain')
    act(() => app.listening.setScope({ kind: 'stage', stageId: 'level' }))
    expect(caption()).toBe('3 Compressor against its bypass, whole take')
    expect(place()).toBe('Measured after all later stages')
    act(() => app.listening.setScope({ kind: 'stage', stageId: 'clean-up' }))
    act(() => app.listening.setListeningPoint('level'))
    expect(caption()).toBe('1 Equaliser against its bypass after 3 Compressor, whole take')
    expect(place()).toBe('Measured after 3 Compressor, through the stages between')
  })

  it('are a row each: without, with, change', () => {
    showWithFigures()
    // ITU-R BS.1770-5, Annex 1: a 0 dBFS sine of 997 Hz in one front channel reads -3.01 LKFS; 0.1 is 20 dB less.
    expect(texts(/^Integrated/)).toEqual(['−23.0', '−17.0', '+6.0'])
    expect(screen.getAllByRole('columnheader').map(({ textContent }) => textContent)).toEqual([
      'without',
      'with',
      'change',
    ])
    expect(texts(/^Loudest 3 s/)).toEqual(['too short', 'too short', ''])
    expect(texts(/^Sibilance/)).toEqual(['none', 'none', ''])
  })

  it('print both sides where there is room, and have the line alone tell the first where there is none', () => {
    const lineOf = () => cells(/^Integrated/)[0]?.querySelector('svg')
    showWithFigures()
    expect(lineOf()?.getAttribute('aria-label')).toBe('−23.0')
    cleanup()
    vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, 0, 400, 300))
    showWithFigures()
    expect(lineOf()?.getAttribute('aria-hidden')).toBe('true')
    expect(texts(/^Integrated/)).toEqual(['−23.0', '−17.0', '+6.0'])
  })

  it('draw the side that is heard solid, and say which is which', () => {
    const { app } = showWithFigures()
    const dots = () =>
      ['solid', 'hollow'].map((kind) =>
        row(/^Integrated/)
          .querySelector(`circle[class*="${kind}"]`)
          ?.getAttribute('cx'),
      )
    const [solid, hollow] = dots()
    expect(Number.parseFloat(solid ?? '')).toBeGreaterThan(Number.parseFloat(hollow ?? ''))
    expect(screen.getByText('hollow without, solid with')).toBeDefined()
    act(() => app.listen.setState({ side: 'bypassed' }))
    expect(dots()).toEqual([hollow, solid])
    expect(screen.getByText('hollow with, solid without')).toBeDefined()
  })

  it('say that a true peak above 0 dBTP clips', () => {
    const { app, evidence } = showWithFigures()
    expect(row(/^True peak/).textContent).not.toContain('clips')
    const processed = {
      ...evidence.processed,
      measures: { ...evidence.processed.measures, truePeakDbtp: 0.83 },
    }
    act(() => app.evidence.setState({ evidence: { ...evidence, processed } }))
    expect(texts(/^True peak/)[1]).toBe('0.8 clips')
    // The dot of that side is marked, whichever is heard.
    const marked = () =>
      [...row(/^True peak/).querySelectorAll('circle')].map((dot) => dot.getAttribute('data-problem'))
    expect(marked()).toEqual(['false', 'true'])
    act(() => app.listen.setState({ side: 'bypassed' }))
    expect(marked()).toEqual(['true', 'false'])
  })

  it('have a row for each stage that reduces gain, with its maximum and median', () => {
    showWithFigures()
    expect(texts(/^3 Compressor, gain reduction/).at(-1)).toBe('max 9.3, median 1.8')
    expect(screen.getAllByRole('row', { name: /gain reduction/ })).toHaveLength(2)
    expect(screen.queryByRole('row', { name: /^1/ })).toBeNull()
  })

  it('are of the loop once they are known, and of the whole take meanwhile', () => {
    const { app, evidence } = showWithFigures()
    const range = { from: 800, to: 4000 }
    act(() => app.listen.setState({ loop: range }))
    act(() => app.evidence.setState({ working: null, isLoopWorking: true }))
    expect(caption()).toMatch(/, whole take; analysing loop$/)
    expect(screen.getByRole('table').getAttribute('aria-busy')).toBe('true')
    expect(texts(/^Integrated/)[1]).toBe('−17.0')
    const loop: LoopEvidence = {
      range,
      bypassed: sideOf(tone(0.2)),
      processed: sideOf(tone(0.1)),
      reductions: new Map([['level', { maxDb: 3, medianDb: 0.5 }]]),
      chains: evidence.chains,
    }
    act(() => app.evidence.setState({ loop, isLoopWorking: false }))
    expect(caption()).toMatch(/, loop 0:00.1–0:00.5$/)
    expect(texts(/^Integrated/)).toEqual(['−17.0', '−23.0', '−6.0'])
    expect(texts(/^3 Compressor/).at(-1)).toBe('max 3.0, median 0.5')
    act(() => app.listen.setState({ loop: null }))
    expect(texts(/^Integrated/)[1]).toBe('−17.0')
  })

  it('say so where they are not up to date', () => {
    const { app } = showWithFigures()
    act(() => app.evidence.setState({ problem: 'The figures could not be worked out.' }))
    expect(screen.getByText('not up to date')).toBeDefined()
  })
})
