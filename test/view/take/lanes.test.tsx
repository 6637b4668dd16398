import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it } from 'vitest'
import type { Evidence, SideEvidence } from '../../../src/audio/evidence/evidence'
import { longTermSpectrum, loudnessOverTime, measure, peakPyramid, type Sound } from '../../../src/core'
import type { Bench } from '../../../src/state/bench'
import { TheTake } from '../../../src/view/take/the-take'
import { showOnPage } from '../keys/on-page'

afterEach(cleanup)

const RATE = 8000

function tone(seconds: number, amplitude: number): Sound {
  const samples = Float32Array.from(
    { length: seconds * RATE },
    (_, n) => amplitude * Math.sin((2 * Math.PI * 440 * n) / RATE),
  )
  return { sampleRate: RATE, channels: [samples] }
}

function evidenceOf(bench: Bench, sound: Sound): Evidence {
  const side: SideEvidence = {
    measures: measure(sound),
    loudness: loudnessOverTime(sound),
    peaks: peakPyramid(sound),
    spectrum: longTermSpectrum(sound),
  }
  const { chain } = bench.chain.getState()
  return {
    without: side,
    with: side,
    stages: new Map(),
    matching: { withoutDb: 0, withDb: 0, measuredOver: 'take' },
    chains: { without: chain, with: chain },
  }
}

const sentences = () => screen.getAllByRole('img').map((picture) => picture.getAttribute('aria-label'))

describe('the lanes', () => {
  // EBU Tech 3341: short-term loudness is measured over 3 s.
  it.each([
    [2, 0.5, 'too short to measure'],
    [5, 0, 'too quiet to measure'],
  ])('say why %d s at %d have no short-term loudness', (seconds, amplitude, words) => {
    const { bench } = showOnPage(<TheTake />)
    act(() =>
      bench.evidence.setState({ evidence: evidenceOf(bench, tone(seconds, amplitude)), working: null }),
    )
    expect(screen.getByText(words)).toBeDefined()
    expect(sentences().at(-1)).toContain(words)
  })

  it('say how high the wave is drawn', () => {
    const { bench } = showOnPage(<TheTake />)
    act(() => bench.evidence.setState({ evidence: evidenceOf(bench, tone(5, 0.5)), working: null }))
    // 20 log10(0.5) = -6.02.
    expect(sentences()[0]).toContain('the lane reaches to −6.0 dBFS')
  })

  it('of stages after the ear say that they are not heard', () => {
    const { bench } = showOnPage(<TheTake />)
    act(() => bench.listening.setEar('level'))
    expect(screen.getAllByText('after the ear, not heard')).toHaveLength(1)
    act(() => bench.listening.setEar(null))
    expect(screen.queryByText('after the ear, not heard')).toBeNull()
  })

  it('do not promise figures that nobody is working on', async () => {
    const { bench } = showOnPage(<TheTake />)
    expect(await screen.findByText('… without')).toBeDefined()
    act(() => bench.evidence.setState({ working: null, problem: 'The figures could not be worked out.' }))
    expect(screen.getByText('not known without')).toBeDefined()
  })

  it('give way to what can be done where there is no take', async () => {
    const { bench } = showOnPage(<TheTake />)
    act(() => bench.take.setState({ take: null, loading: null }))
    expect(screen.getByText(/no take on the bench/)).toBeDefined()
    expect(screen.queryAllByRole('img')).toEqual([])
    await userEvent.click(screen.getByRole('button', { name: 'Try the demo' }))
    expect(bench.take.getState().loading).toBe('the demo')
  })

  it('stop taking in a file when asked to', async () => {
    const { bench } = showOnPage(<TheTake />)
    act(() => bench.take.setState({ loading: 'long.wav' }))
    await userEvent.click(screen.getByRole('button', { name: 'stop' }))
    expect(bench.take.getState().loading).toBeNull()
  })
})
