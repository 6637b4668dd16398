import { act, cleanup, fireEvent, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { App } from '../../../src/session/app'
import { addBand, setBand } from '../../../src/session/chain/chain-edits'
import { TheCurve } from '../../../src/view/curve/the-curve'
import { showInApp } from '../chain/in-app'

let app: App
const user = userEvent.setup()
const bandOf = (stage: number, band: number) => {
  const doc = app.chain.getState().chain.stages[stage]
  return doc?.kind === 'equaliser' ? doc.settings.bands[band] : undefined
}

beforeEach(() => {
  app = showInApp(<TheCurve />)
})
afterEach(cleanup)

describe('the curve', () => {
  it('says in a sentence what it shows', () => {
    const label = screen.getByRole('img', { name: /response/ }).getAttribute('aria-label')
    expect(label).toMatch(/^Combined magnitude response from 20 Hz to 20 kHz: highest \+\d.* lowest −\d+/)
  })

  it('makes one change of a drag, and selects the stage', () => {
    const handle = screen.getByRole('group', { name: 'Band 2a, high-shelf' })
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
    const handle = screen.getByRole('group', { name: 'Band 2a, high-shelf' })
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
    const note = () => screen.getByText(/^±/).textContent
    act(() => app.chain.getState().edit(addBand('lift')))
    const handle = screen.getByRole('group', { name: 'Band 2c, bell' })
    fireEvent.pointerDown(handle, { button: 0, clientX: 100, clientY: 100, pointerId: 1 })
    fireEvent.pointerMove(handle, { clientX: 130, clientY: 110, pointerId: 1 })
    act(() => app.chain.getState().edit(setBand('lift', 0, { gainDb: 10.5 })))
    expect(note()).toMatch(/^±12 dB/)
    act(() => app.chain.getState().undo())
    end(handle)
    act(() => app.chain.getState().edit(setBand('lift', 0, { gainDb: 20 })))
    expect(note()).toMatch(/^±24 dB/)
  })

  it('moves a handle by the arrow keys the way they point', async () => {
    screen.getByRole('slider', { name: 'Band 2a, Frequency' }).focus()
    const before = bandOf(1, 0)
    await user.keyboard('{ArrowUp}')
    expect(bandOf(1, 0)?.gainDb).toBeCloseTo((before?.gainDb ?? Number.NaN) + 0.1, 9)
    await user.keyboard('{ArrowLeft}')
    expect(bandOf(1, 0)?.frequencyHz).toBeLessThan(before?.frequencyHz ?? Number.NaN)
  })

  it('says that the response is that of the current chain, where the spectra are those of stored versions', () => {
    const note = () => screen.getByText(/^±/).textContent
    expect(note()).toMatch(/dB; spectrum\s+without\s+with$/)
    const { chain } = app.chain.getState()
    act(() => app.listening.setScope({ kind: 'snapshots', a: { name: '', chain }, b: { name: '', chain } }))
    expect(note()).toMatch(/dB; current response; spectrum\s+A\s+B$/)
  })

  it('says what a hand and what keys do, as they do it: Shift makes arrow keys go farther, and leaves the Q', async () => {
    expect(screen.getByText(/^Drag a band/).textContent).toBe(
      'Drag a band, or with Shift its Q; arrow keys move the band.',
    )
    screen.getByRole('slider', { name: 'Band 2a, Gain' }).focus()
    const before = bandOf(1, 0)
    await user.keyboard('{Shift>}{ArrowUp}{/Shift}')
    expect(bandOf(1, 0)?.gainDb).toBeGreaterThan((before?.gainDb ?? Number.NaN) + 0.5)
    expect(bandOf(1, 0)?.q).toBe(before?.q)
  })

  it('takes a gain back to its default on Delete', async () => {
    screen.getByRole('slider', { name: 'Band 2a, Gain' }).focus()
    await user.keyboard('{Delete}')
    expect(bandOf(1, 0)?.gainDb).toBe(0)
  })

  it('has no gain to set on a pass', async () => {
    expect(screen.queryByRole('slider', { name: 'Band 1a, Gain' })).toBeNull()
    screen.getByRole('slider', { name: 'Band 1a, Frequency' }).focus()
    await user.keyboard('{ArrowUp}')
    expect(app.chain.getState().past).toHaveLength(0)
  })
})
