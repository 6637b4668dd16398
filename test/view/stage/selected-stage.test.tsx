import { act, cleanup, fireEvent, screen, within } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { type Parameter, stageDefinitions } from '../../../src/core'
import type { App } from '../../../src/session/app'
import { SelectedStage } from '../../../src/view/stage/selected-stage'
import { showInApp } from '../chain/in-app'

let app: App
const user = userEvent.setup()
const past = () => app.chain.getState().past.map(({ words }) => words)
const stage = (index: number) => app.chain.getState().chain.stages[index]

beforeEach(() => {
  app = showInApp(<SelectedStage />)
})
afterEach(cleanup)

describe('an equaliser at hand', () => {
  it('shows the settings that each band listens to, and no others', async () => {
    const band = within(screen.getByRole('listitem', { name: 'Band a' }))
    const sliders = () => band.getAllByRole('slider').map((slider) => slider.getAttribute('aria-label'))
    await user.selectOptions(band.getByRole('combobox', { name: 'Band a, Slope' }), '12 dB per octave')
    expect(sliders()).toEqual(['Band a, Frequency', 'Band a, Q'])
    await user.selectOptions(band.getByRole('combobox', { name: 'Band a, Shape' }), 'bell')
    expect(sliders()).toEqual(['Band a, Frequency', 'Band a, Gain', 'Band a, Q'])
    await user.selectOptions(band.getByRole('combobox', { name: 'Band a, Shape' }), 'high-pass')
    await user.selectOptions(band.getByRole('combobox', { name: 'Band a, Slope' }), '24 dB per octave')
    expect(sliders()).toEqual(['Band a, Frequency'])
  })

  it('makes one change of a drag', () => {
    const slider = screen.getByRole('slider', { name: 'Band b, Gain' })
    for (const position of [0.4, 0.3, 0.25]) fireEvent.change(slider, { target: { value: position } })
    fireEvent.pointerUp(slider)
    expect(past()).toEqual(['1b, gain −6 to −12 dB'])
    fireEvent.change(slider, { target: { value: 0.5 } })
    fireEvent.pointerUp(slider)
    expect(past()).toHaveLength(2)
    app.chain.getState().undo()
    app.chain.getState().undo()
    expect(stage(0)?.settings).toMatchObject({ bands: [{}, { gainDb: -6 }] })
  })

  it('switches, adds and removes bands', async () => {
    await user.click(screen.getByRole('switch', { name: 'Band a' }))
    await user.click(screen.getByRole('button', { name: 'Add a band' }))
    expect(stage(0)?.settings).toMatchObject({ bands: [{ on: false }, { on: true }, { gainDb: 0 }] })
    await user.click(screen.getByRole('button', { name: 'Remove band a' }))
    expect(stage(0)?.settings).toMatchObject({ bands: [{ gainDb: -6 }, { gainDb: 0 }] })
    expect(document.activeElement?.textContent).toBe('Add a band')
  })

  it('compares one band with its bypass, and the stage again', async () => {
    const compare = screen.getByRole('button', { name: 'Compare band b with its bypass' })
    await user.click(compare)
    expect(app.listen.getState().scope).toEqual({ kind: 'band', stageId: 'clean-up', bandIndex: 1 })
    expect(screen.getAllByRole('button', { pressed: true })).toEqual([compare])
    await user.click(compare)
    expect(app.listen.getState().scope).toEqual({ kind: 'stage', stageId: 'clean-up' })
  })

  it('compares the stage once the band that was compared is removed', async () => {
    await user.click(screen.getByRole('button', { name: 'Compare band a with its bypass' }))
    await user.click(screen.getByRole('button', { name: 'Remove band a' }))
    expect(app.listen.getState().scope).toEqual({ kind: 'stage', stageId: 'clean-up' })
  })

  it('adds no more bands than an equaliser holds', async () => {
    const add = screen.getByRole('button', { name: 'Add a band' })
    for (let i = 0; i < 15; i++) await user.click(add)
    expect(screen.getAllByRole('listitem')).toHaveLength(12)
    expect(add.textContent).toBe('No more than 12 bands')
  })
})

const isRare = (parameter: Parameter) => 'rare' in parameter && parameter.rare === true

describe.each([
  ['compressor', 2, 'level'],
  ['de-esser', 3, 'sibilance'],
] as const)('a %s at hand', (kind, index, id) => {
  beforeEach(() => {
    act(() => app.chain.getState().select(id))
  })

  it('starts a new change after a double click', () => {
    const slider = screen.getByRole('slider', { name: 'Threshold' })
    // Away from the default, which the double click goes back to.
    fireEvent.change(slider, { target: { value: 0.9 } })
    fireEvent.pointerUp(slider)
    fireEvent.doubleClick(slider)
    fireEvent.change(slider, { target: { value: 0.1 } })
    expect(past()).toHaveLength(3)
  })

  it('has a control with a name for every setting of its table', async () => {
    screen.getByRole('heading', { name: new RegExp(`^${index + 1} ?${stageDefinitions[kind].label}`) })
    const parameters: Parameter[] = Object.values(stageDefinitions[kind].parameters)
    for (const { label } of parameters.filter(isRare))
      expect(screen.queryByRole('slider', { name: label }), label).toBeNull()
    await user.click(screen.getByRole('button', { name: /^More settings/ }))
    for (const { type, label } of parameters)
      expect(screen.getByRole(type === 'number' ? 'slider' : 'combobox', { name: label })).toBeDefined()
  })

  it('sets what is typed', async () => {
    const field = screen.getByRole('textbox', { name: 'Threshold, typed' })
    await user.clear(field)
    await user.type(field, '−31,5{Enter}')
    expect(stage(index)?.settings).toMatchObject({ thresholdDb: -31.5 })
    expect(past()).toHaveLength(1)
  })

  it('says in a sentence what its picture shows', async () => {
    const picture = screen.getByRole('img')
    expect(picture.getAttribute('aria-label')).toContain('dBFS')
  })
})
