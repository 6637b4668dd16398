import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { reductionSummary, type Sound, TRACE_HOP_FRAMES } from '../../../../src/core'
import { TheTake } from '../../../../src/view/take/the-take'
import { showOnPage } from '../../keys/on-page'
import { evidenceOf } from '../evidence-of'

afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
})

const RATE = 8000

function tone(seconds: number, amplitude: number): Sound {
  const samples = Float32Array.from(
    { length: seconds * RATE },
    (_, n) => amplitude * Math.sin((2 * Math.PI * 440 * n) / RATE),
  )
  return { sampleRate: RATE, channels: [samples] }
}

const sentences = () => screen.getAllByRole('img').map((picture) => picture.getAttribute('aria-label'))

describe('the lanes', () => {
  // EBU Tech 3341: short-term loudness is measured over 3 s.
  it.each([
    [2, 0.5, 'too short to measure'],
    [5, 0, 'too quiet to measure'],
  ])('say why %d s at %d have no short-term loudness', (seconds, amplitude, words) => {
    const { app } = showOnPage(<TheTake />)
    act(() => app.evidence.setState({ evidence: evidenceOf(app, tone(seconds, amplitude)), working: null }))
    expect(screen.getByText(words)).toBeDefined()
    expect(sentences().at(-1)).toContain(words)
  })

  it('show the wave up to the peak that is seen, and say how far and where', () => {
    vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, 0, 500, 300))
    const { app } = showOnPage(<TheTake />)
    const quietThenLoud = tone(10, 0.05)
    quietThenLoud.channels[0]?.set([0.45], 8 * RATE)
    act(() => app.evidence.setState({ evidence: evidenceOf(app, quietThenLoud), working: null }))
    // 20 log10(0.45) = -6.94, 20 log10(0.05) = -26.02: the next steps of 2 dB.
    expect(sentences()[0]).toContain('reaches up to −6 dBFS. Peak −6.9 dBFS at 0:08.0 without')
    expect(screen.getAllByText('−6.9')).toHaveLength(1)
    act(() => app.view.setState({ seen: { from: 0, to: 4 * RATE } }))
    expect(sentences()[0]).toContain('reaches up to −26 dBFS. Peak −26.0 dBFS at 0:0')
  })

  it('have the side that is heard in front', async () => {
    const { app } = showOnPage(<TheTake />)
    act(() => app.evidence.setState({ evidence: evidenceOf(app, tone(5, 0.5)), working: null }))
    expect(sentences()[0]).toContain('In front: with.')
    expect(screen.getByTitle('heard').textContent).toBe('with')
    act(() => app.listening.switchSide())
    expect(sentences()[0]).toContain('In front: without.')
    expect(screen.getByTitle('heard').textContent).toBe('without')
  })

  it('name the stored versions that are compared, and tell of their stages', () => {
    vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, 0, 1000, 300))
    const { app } = showOnPage(<TheTake />)
    const { chain } = app.chain.getState()
    act(() => app.evidence.setState({ evidence: evidenceOf(app, tone(5, 0.5)), working: null }))
    act(() => app.listen.setState({ scope: { kind: 'snapshots', a: chain, b: { ...chain, stages: [] } } }))
    expect(screen.getByText('lanes: B')).toBeDefined()
    expect(sentences()[0]).toMatch(/dBFS at \S+ A, .* B\. In front: B\.$/)
    expect(sentences().some((sentence) => sentence?.startsWith('Gain reduction'))).toBe(false)
  })

  it('of stages after the listening point say that they are not heard', () => {
    const { app } = showOnPage(<TheTake />)
    act(() => app.listening.setListeningPoint('level'))
    expect(screen.getAllByText('after listening point')).toHaveLength(1)
    act(() => app.listening.setListeningPoint(null))
    expect(screen.queryByText('after listening point')).toBeNull()
  })

  it('do not promise figures that nobody is working on', async () => {
    const { app } = showOnPage(<TheTake />)
    expect(await screen.findAllByText('…')).not.toHaveLength(0)
    act(() => app.evidence.setState({ working: null, problem: 'The figures could not be worked out.' }))
    expect(screen.queryAllByText('…')).toEqual([])
    expect(screen.getAllByText('not known')).not.toHaveLength(0)
  })

  it('mark the maximum of gain reduction where it occurs, and say it', () => {
    vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, 0, 1000, 300))
    const { app } = showOnPage(<TheTake />)
    const gainDb = new Float32Array(Math.ceil((10 * RATE) / TRACE_HOP_FRAMES)).fill(-2)
    gainDb.fill(-9.3, 250, 252)
    const trace = { hopFrames: TRACE_HOP_FRAMES, gainDb }
    const stage = { loudnessChangeLu: null, trace, reduction: reductionSummary(trace) }
    const evidence = { ...evidenceOf(app, tone(10, 0.5)), stages: new Map([['level', stage]]) }
    act(() => app.evidence.setState({ evidence, working: null }))
    const lane = screen.getByRole('img', { name: /^Gain reduction of stage 3, Compressor: max 9.3 dB/ })
    // Hop 250.5 of 128 frames at 8 kHz: 4.008 s, of 10 s over 1000 px.
    expect(lane.getAttribute('aria-label')).toContain('max 9.3 dB at 0:04.0, median 2 dB')
    const mark = lane.parentElement?.querySelector<HTMLElement>('[aria-hidden="true"]')
    expect(Number.parseFloat(mark?.style.left ?? '')).toBeCloseTo(400.8, 1)
    act(() => app.view.setState({ seen: { from: 0, to: 3 * RATE } }))
    expect(lane.parentElement?.querySelector('[aria-hidden="true"]')).toBeNull()
  })

  it('give way to what can be done where there is no take', async () => {
    const { app } = showOnPage(<TheTake />)
    act(() => app.take.setState({ take: null, loading: null }))
    expect(screen.getByText('No take is open')).toBeDefined()
    expect(screen.queryAllByRole('img')).toEqual([])
    await userEvent.click(screen.getByRole('button', { name: 'try the demo' }))
    expect(app.take.getState().loading).toBe('the demo')
  })

  it('stop loading a file when asked to', async () => {
    const { app } = showOnPage(<TheTake />)
    const cancel = vi.spyOn(app.takes, 'cancel')
    act(() => app.take.setState({ loading: 'long.wav' }))
    await userEvent.click(screen.getByRole('button', { name: 'Cancel' }))
    expect(cancel).toHaveBeenCalledOnce()
  })
})
