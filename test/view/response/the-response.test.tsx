import { act, cleanup, fireEvent, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { comparisonOf } from '../../../src/core'
import type { App } from '../../../src/session/app'
import { addBand, setBand } from '../../../src/session/chain/chain-edits'
import { TheResponse } from '../../../src/view/response/the-response'
import { evidenceOf, take } from '../../session/trials/trial-app'
import { showInApp } from '../chain/in-app'

let app: App
const user = userEvent.setup()
const bandOf = (stage: number, band: number) => {
  const doc = app.chain.getState().chain.stages[stage]
  return doc?.kind === 'equaliser' ? doc.settings.bands[band] : undefined
}

/** What is pressed of a band. */
function handleOf(label: string): HTMLElement {
  const handle = document.querySelector<HTMLElement>(`[data-band="${label}"]`)
  if (!handle) throw new RangeError(`no band ${label}`)
  return handle
}
const sliderOf = (name: string) => screen.getByRole('slider', { name })
/** The highest figure of the dB axis. */
const topOfScale = () =>
  screen
    .getAllByText(/^[+]\d+$/)
    .map(({ textContent }) => textContent)
    .at(-1)

beforeEach(() => {
  app = showInApp(<TheResponse />)
})
afterEach(cleanup)

describe('the response', () => {
  it('says in a sentence what it shows', () => {
    const label = screen.getByRole('img', { name: /response/ }).getAttribute('aria-label')
    expect(label).toMatch(/^Combined magnitude response from 20 Hz to 20 kHz: highest \+\d.* lowest −\d+/)
  })

  it('makes one change of a drag, and selects the stage', () => {
    const handle = handleOf('2a')
    const before = bandOf(1, 0)
    fireEvent.pointerDown(handle, { button: 0, clientX: 100, clientY: 100, pointerId: 1 })
    for (const clientX of [110, 130, 160])
      fireEvent.pointerMove(handle, { clientX, clientY: 90, pointerId: 1 })
    fireEvent.pointerUp(handle, { pointerId: 1 })
    expect(app.chain.getState().past).toHaveLength(1)
    expect(app.chain.getState().selectedId).toBe('lift')
    expect(bandOf(1, 0)?.frequencyHz).toBeGreaterThan(before?.frequencyHz ?? Number.NaN)
    expect(bandOf(1, 0)?.gainDb).toBeGreaterThan(before?.gainDb ?? Number.NaN)
    app.chain.getState().undo()
    expect(bandOf(1, 0)).toEqual(before)
  })

  it('leaves the drag to the pointer that began it', () => {
    const handle = handleOf('2a')
    fireEvent.pointerDown(handle, { button: 0, clientX: 100, clientY: 100, pointerId: 1 })
    fireEvent.pointerMove(handle, { clientX: 110, clientY: 100, pointerId: 1 })
    const held = bandOf(1, 0)
    fireEvent.pointerDown(handle, { button: 0, clientX: 300, clientY: 50, pointerId: 2 })
    fireEvent.pointerMove(handle, { clientX: 320, clientY: 20, pointerId: 2 })
    fireEvent.pointerUp(handle, { pointerId: 2 })
    expect(bandOf(1, 0)).toEqual(held)
    fireEvent.pointerMove(handle, { clientX: 130, clientY: 100, pointerId: 1 })
    expect(bandOf(1, 0)?.frequencyHz).toBeGreaterThan(held?.frequencyHz ?? Number.NaN)
    fireEvent.pointerUp(handle, { pointerId: 1 })
    const done = bandOf(1, 0)
    fireEvent.pointerMove(handle, { clientX: 400, clientY: 100, pointerId: 1 })
    expect(bandOf(1, 0)).toEqual(done)
  })

  it.each([
    ['is let go', (held: HTMLElement) => fireEvent.pointerUp(held, { pointerId: 1 })],
    ['is cancelled', (held: HTMLElement) => fireEvent.pointerCancel(held, { pointerId: 1 })],
    [
      'holds a band that is undone beneath it',
      () => {
        act(() => app.chain.getState().undo())
        act(() => app.chain.getState().undo())
      },
    ],
  ])('fits its scale to the chain again once a pointer %s', (_, end) => {
    act(() => app.chain.getState().edit(addBand('lift')))
    const handle = handleOf('2c')
    fireEvent.pointerDown(handle, { button: 0, clientX: 100, clientY: 100, pointerId: 1 })
    fireEvent.pointerMove(handle, { clientX: 130, clientY: 110, pointerId: 1 })
    act(() => app.chain.getState().edit(setBand('lift', 0, { gainDb: 10.5 })))
    expect(topOfScale()).toBe('+12')
    act(() => app.chain.getState().undo())
    end(handle)
    act(() => app.chain.getState().edit(setBand('lift', 0, { gainDb: 20 })))
    expect(topOfScale()).toBe('+24')
  })

  it('moves a handle by the arrow keys the way they point', async () => {
    sliderOf('2 Equaliser, band a').focus()
    const before = bandOf(1, 0)
    await user.keyboard('{ArrowUp}')
    expect(bandOf(1, 0)?.gainDb).toBeCloseTo((before?.gainDb ?? Number.NaN) + 0.1, 9)
    await user.keyboard('{ArrowLeft}')
    expect(bandOf(1, 0)?.frequencyHz).toBeLessThan(before?.frequencyHz ?? Number.NaN)
  })

  it('says that the response is that of the current chain, where the spectra are those of stored versions', () => {
    expect(screen.getByText('spectrum: whole take')).toBeDefined()
    const { chain } = app.chain.getState()
    act(() => app.listening.setScope({ kind: 'snapshots', a: { name: '', chain }, b: { name: '', chain } }))
    expect(screen.getByText('current chain; spectrum: whole take')).toBeDefined()
  })

  it('moves a band further with Shift held, and leaves its Q', async () => {
    sliderOf('2 Equaliser, band a').focus()
    const before = bandOf(1, 0)
    await user.keyboard('{Shift>}{ArrowUp}{/Shift}')
    expect(bandOf(1, 0)?.gainDb).toBeGreaterThan((before?.gainDb ?? Number.NaN) + 0.5)
    expect(bandOf(1, 0)?.q).toBe(before?.q)
  })

  it('is one stop of the Tab key, from which Page Up and Page Down, Home and End go from band to band', async () => {
    const focused = () => document.activeElement?.getAttribute('aria-label')
    sliderOf('1 Equaliser, band a').focus()
    const before = app.chain.getState().chain
    const path: (string | null | undefined)[] = []
    for (const key of ['PageDown', 'PageDown', 'PageUp', 'End', 'PageDown', 'Home', 'PageUp']) {
      await user.keyboard(`{${key}}`)
      path.push(focused())
    }
    const [first, second, third, last] = ['1', '2'].flatMap((stage) =>
      ['a', 'b'].map((letter) => `${stage} Equaliser, band ${letter}`),
    )
    expect(path).toEqual([second, third, second, last, last, first, first])
    expect(app.chain.getState().chain).toBe(before)
    await user.keyboard('{PageDown}{Shift>}{Tab}{/Shift}')
    expect(focused()).toBe('Spectrum difference')
    // Back to the band that was left, and out behind it.
    await user.tab()
    expect(focused()).toBe(second)
    await user.tab()
    expect(document.activeElement).toBe(document.body)
  })

  it('keeps a stop of the Tab key when the band that had it is gone', () => {
    act(() => app.chain.getState().edit(addBand('lift')))
    act(() => sliderOf('2 Equaliser, band c').focus())
    act(() => app.chain.getState().undo())
    const stops = screen.getAllByRole('slider').filter(({ tabIndex }) => tabIndex === 0)
    expect(stops.map((slider) => slider.getAttribute('aria-label'))).toEqual(['1 Equaliser, band a'])
  })

  it('has each band say its frequency and gain in words', () => {
    act(() => app.chain.getState().edit(setBand('lift', 0, { frequencyHz: 3000, gainDb: 4 })))
    expect(sliderOf('2 Equaliser, band a').getAttribute('aria-valuetext')).toBe(
      '3 kilohertz, plus 4.0 decibels, high shelf',
    )
    expect(sliderOf('1 Equaliser, band a').getAttribute('aria-valuetext')).toMatch(/hertz, high-pass$/)
  })

  it('takes a gain back to its default on Delete', async () => {
    sliderOf('2 Equaliser, band a').focus()
    await user.keyboard('{Delete}')
    expect(bandOf(1, 0)?.gainDb).toBe(0)
  })

  it('has no gain to set on a pass', async () => {
    sliderOf('1 Equaliser, band a').focus()
    await user.keyboard('{ArrowUp}{Delete}')
    expect(app.chain.getState().past).toHaveLength(0)
  })
})

describe('the readout', () => {
  const readout = () => document.getElementById('response-readout')?.textContent

  it('reads frequency, note and response at the band with the focus, and follows it', async () => {
    act(() => app.chain.getState().edit(setBand('lift', 0, { frequencyHz: 440 })))
    act(() => sliderOf('2 Equaliser, band a').focus())
    expect(readout()).toMatch(/^440 Hz A4 [+−]\d+\.\d dB without –, with – dBFS$/)
    act(() => app.chain.getState().edit(setBand('lift', 0, { frequencyHz: 880 })))
    expect(readout()).toMatch(/^880 Hz A5/)
    act(() => sliderOf('2 Equaliser, band a').blur())
    expect(readout()).toBe('spectrum: whole take')
  })

  it('reads at the pointer ahead of that, and both spectra there', () => {
    const { chain } = app.chain.getState()
    act(() => app.evidence.setState({ evidence: evidenceOf(comparisonOf(chain, { kind: 'chain' })) }))
    const plot = screen.getByRole('img', { name: /response/ })
    // Its box is empty here, so that the edge of the plot is at 0.
    fireEvent.pointerMove(plot, { clientX: 320 })
    expect(readout()).toMatch(/Hz [A-G]♯?\d [+−]?\d+\.\d dB without −\d+, with −\d+ dBFS$/)
    fireEvent.click(screen.getByRole('switch', { name: 'Spectrum difference' }))
    expect(readout()).toMatch(/dB difference [+−]?\d+\.\d dB$/)
    fireEvent.pointerMove(plot, { clientX: 2 })
    expect(readout()).toBe('spectrum: whole take')
  })
})

describe('the spectra', () => {
  const paths = (of: string) =>
    [...document.querySelectorAll(`svg path[class*="${of}"]`)].map((path) => path.getAttribute('d'))

  beforeEach(() => {
    const { chain } = app.chain.getState()
    act(() => app.evidence.setState({ evidence: evidenceOf(comparisonOf(chain, { kind: 'chain' })) }))
  })

  it('show the side that is heard as an area, and the other as a line', () => {
    const [edge, other] = [paths('edge'), paths('other')]
    expect([edge.length, other.length, paths('area').length]).toEqual([1, 1, 1])
    act(() => app.listen.setState({ side: 'bypassed' }))
    expect([paths('edge'), paths('other')]).toEqual([other, edge])
  })

  it('give way to what the spectrum gains, where that is asked for', () => {
    fireEvent.click(screen.getByRole('switch', { name: 'Spectrum difference' }))
    expect([paths('other').length, paths('area').length]).toEqual([0, 1])
    expect(screen.getByRole('img', { name: /Behind it what the spectrum gains, whole take/ })).toBeDefined()
  })

  it('are of the loop once they are known, and say of what they are meanwhile', () => {
    const { chain } = app.chain.getState()
    const loop = { from: 0, to: 4000 }
    const { evidence } = app.evidence.getState()
    act(() => app.take.setState({ take }))
    act(() => app.evidence.setState({ evidence }))
    const whole = paths('edge')
    act(() => app.listen.setState({ loop }))
    act(() => app.evidence.setState({ working: null, isLoopWorking: true }))
    expect(screen.getByText('spectrum: whole take; analysing loop')).toBeDefined()
    expect(paths('edge')).toEqual(whole)
    const quieter = { ...chain, stages: chain.stages.map((stage) => ({ ...stage, on: false })) }
    const { bypassed, processed } = evidenceOf({ bypassed: chain, processed: quieter })
    const chains = { bypassed: chain, processed: quieter }
    act(() =>
      app.evidence.setState({
        loop: { range: loop, bypassed, processed, reductions: new Map(), chains },
        isLoopWorking: false,
      }),
    )
    expect(screen.getByText('spectrum: loop 0:00.0–0:00.5')).toBeDefined()
    expect(paths('edge')).not.toEqual(whole)
    act(() => app.listen.setState({ loop: null }))
    expect(paths('edge')).toEqual(whole)
  })
})
