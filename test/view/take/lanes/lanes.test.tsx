import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it, vi } from 'vitest'
import type { Evidence, SideEvidence } from '../../../../src/compute/evidence'
import { longTermSpectrum, loudnessOverTime, measure, peakPyramid, type Sound } from '../../../../src/core'
import type { App } from '../../../../src/session/app'
import type { Take } from '../../../../src/session/take/take-store'
import { TheTake } from '../../../../src/view/take/the-take'
import { showOnPage, take } from '../../keys/on-page'

afterEach(cleanup)

const RATE = 8000

function tone(seconds: number, amplitude: number): Sound {
  const samples = Float32Array.from(
    { length: seconds * RATE },
    (_, n) => amplitude * Math.sin((2 * Math.PI * 440 * n) / RATE),
  )
  return { sampleRate: RATE, channels: [samples] }
}

function evidenceOf(app: App, sound: Sound): Evidence {
  const side: SideEvidence = {
    measures: measure(sound),
    loudness: loudnessOverTime(sound),
    peaks: peakPyramid(sound),
    spectrum: longTermSpectrum(sound),
  }
  const { chain } = app.chain.getState()
  return {
    bypassed: side,
    processed: side,
    stages: new Map(),
    matching: { bypassedDb: 0, processedDb: 0, measuredOver: 'take' },
    chains: { bypassed: chain, processed: chain },
  }
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

  it('keep the height of the wave for a take until what is compared reaches higher, and say it', () => {
    const { app } = showOnPage(<TheTake />)
    // 20 log10(0.2) = -13.98: the next step of 6 dB is -12.
    const peaky: Take = { ...take, measures: measure(tone(5, 0.2)) }
    act(() => app.take.setState({ take: peaky }))
    for (const [amplitude, reach] of [
      [0.2, '−12 dBFS'],
      [0.05, '−12 dBFS'],
      [0.45, '−6 dBFS'],
    ] as const) {
      act(() => app.evidence.setState({ evidence: evidenceOf(app, tone(5, amplitude)), working: null }))
      expect(sentences()[0]).toContain(reach)
      expect(screen.getByText(reach)).toBeDefined()
    }
  })

  it('name the stored versions that are compared, and tell of their stages', () => {
    const { app } = showOnPage(<TheTake />)
    const { chain } = app.chain.getState()
    act(() => app.evidence.setState({ evidence: evidenceOf(app, tone(5, 0.5)), working: null }))
    act(() =>
      app.listen.setState({
        scope: {
          kind: 'snapshots',
          a: { name: '', chain },
          b: { name: '', chain: { ...chain, stages: [] } },
        },
      }),
    )
    expect(screen.getByText(/lanes: B$/).textContent).toMatch(/A\s+B lanes: B$/)
    expect(screen.getByText(/dBTP A$/)).toBeDefined()
    expect(document.body.textContent).not.toMatch(/dBTP with/)
    expect(sentences().some((sentence) => sentence?.startsWith('Gain reduction'))).toBe(false)
  })

  it('of stages after the listening point say that they are not heard', () => {
    const { app } = showOnPage(<TheTake />)
    act(() => app.listening.setListeningPoint('level'))
    expect(screen.getAllByText('after the listening point')).toHaveLength(1)
    act(() => app.listening.setListeningPoint(null))
    expect(screen.queryByText('after the listening point')).toBeNull()
  })

  it('do not promise figures that nobody is working on', async () => {
    const { app } = showOnPage(<TheTake />)
    expect(await screen.findByText('… without')).toBeDefined()
    act(() => app.evidence.setState({ working: null, problem: 'The figures could not be worked out.' }))
    expect(screen.getByText('not known without')).toBeDefined()
  })

  it('give way to what can be done where there is no take', async () => {
    const { app } = showOnPage(<TheTake />)
    act(() => app.take.setState({ take: null, loading: null }))
    expect(screen.getByText(/^No take is open\./)).toBeDefined()
    expect(screen.queryAllByRole('img')).toEqual([])
    await userEvent.click(screen.getByRole('button', { name: 'Try the demo' }))
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
