import { cleanup, fireEvent, screen } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { App } from '../../../../src/session/app'
import { SelectedStage } from '../../../../src/view/stage/selected-stage'
import { showInApp } from '../../chain/in-app'

let app: App
const sweep = () => app.listen.getState().sweep
const button = () => screen.getByRole('button', { name: 'Sweep band b: hold and move' })
const slider = () => screen.getByRole('slider', { name: 'Band b, Frequency' })
const usualHz = () => {
  const stage = app.chain.getState().chain.stages[0]
  return stage?.kind === 'equaliser' ? stage.settings.bands[1]?.frequencyHz : undefined
}

beforeEach(() => {
  app = showInApp(<SelectedStage />)
})
afterEach(cleanup)

describe('the sweep button', () => {
  it('sweeps while Space is held, by the arrow keys, and puts everything back', () => {
    const before = app.chain.getState().chain
    fireEvent.keyDown(button(), { key: ' ' })
    expect(sweep()).toMatchObject({ stageId: 'clean-up', bandIndex: 1, frequencyHz: usualHz() })
    fireEvent.keyDown(button(), { key: ' ', repeat: true })
    fireEvent.keyDown(button(), { key: 'ArrowRight', shiftKey: true })
    expect(sweep()?.frequencyHz).toBeGreaterThan(1.05 * (usualHz() ?? 0))
    expect(button().getAttribute('aria-pressed')).toBe('true')
    fireEvent.keyUp(button(), { key: ' ' })
    expect(sweep()).toBeNull()
    expect(app.chain.getState().chain).toBe(before)
    expect(app.chain.getState().past).toEqual([])
  })

  it('lets the frequency slider move the sweep while it is held', () => {
    fireEvent.keyDown(button(), { key: ' ' })
    fireEvent.change(slider(), { target: { value: 0.9 } })
    expect(sweep()?.frequencyHz).toBeGreaterThan(5000)
    expect(app.chain.getState().past).toEqual([])
    fireEvent.keyUp(button(), { key: ' ' })
    fireEvent.change(slider(), { target: { value: 0.9 } })
    expect(app.chain.getState().past).toHaveLength(1)
  })

  it('follows the pointer sideways, and offers the frequency it ended at', () => {
    fireEvent.pointerDown(button(), { button: 0, pointerId: 1, clientX: 100 })
    fireEvent.pointerMove(button(), { pointerId: 1, clientX: 200 })
    const found = sweep()?.frequencyHz ?? 0
    expect(found).toBeGreaterThan(2 * (usualHz() ?? 0))
    fireEvent.lostPointerCapture(button(), { pointerId: 1 })
    expect(sweep()).toBeNull()
    fireEvent.click(screen.getByRole('button', { name: /^set to/ }))
    expect(usualHz()).toBe(found)
    expect(app.chain.getState().past).toHaveLength(1)
    expect(screen.queryByRole('button', { name: /^set to/ })).toBeNull()
  })

  it('says what is heard in place of the settings, for as long as it is held', () => {
    fireEvent.keyDown(button(), { key: ' ' })
    fireEvent.change(slider(), { target: { value: 0.5 } })
    // Half of the way from 10 Hz to 24 kHz, by equal ratios.
    const row = screen.getByRole('listitem', { name: 'Band b' })
    expect(row.textContent).toMatch(/sweepheard \+10 dB at 490 Hz, Q 6/)
    for (const [name, value] of [
      ['Frequency', '490 Hz'],
      ['Gain', '+10.0 dB'],
      ['Q', '6.00'],
    ] as const) {
      const field = screen.getByRole<HTMLInputElement>('textbox', { name: `Band b, ${name}, typed` })
      expect(field.value).toBe(value)
      expect(field.parentElement?.textContent).toContain(`${name}sweep`)
    }
    fireEvent.keyUp(button(), { key: ' ' })
    expect(screen.getByRole<HTMLInputElement>('textbox', { name: 'Band b, Gain, typed' }).value).toBe(
      '−6.0 dB',
    )
    expect(row.textContent).not.toContain('heard')
  })

  it('ends when the focus goes elsewhere', () => {
    fireEvent.keyDown(button(), { key: ' ' })
    fireEvent.blur(button())
    expect(sweep()).toBeNull()
  })
})
