import { act, cleanup, fireEvent, screen, within } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { comparisonOf, plain } from '../../../src/core'
import type { App } from '../../../src/session/app'
import { removeStage, switchStage } from '../../../src/session/chain/chain-edits'
import { TheChain } from '../../../src/view/chain/the-chain'
import { evidenceOf } from '../../session/trials/trial-app'
import { showOnPage } from '../keys/on-page'

let app: App
const user = userEvent.setup()
const ids = () => app.chain.getState().chain.stages.map(({ id }) => id)

const point = () => screen.getByRole('slider', { name: 'Listening point' })
const pointAt = () => point().getAttribute('aria-valuetext')

/** Puts the stages side by side, 100 px each: nothing is laid out here. */
const placeInLine = () =>
  document.querySelectorAll('[data-stage-id]').forEach((stage, i) => {
    stage.getBoundingClientRect = () => new DOMRect(100 * i, 0, 100, 50)
  })

beforeEach(() => {
  app = showOnPage(<TheChain />).app
})
afterEach(cleanup)

describe('the chain', () => {
  it('lists the take, the stages in order, and the way out', () => {
    const items = within(screen.getByRole('list')).getAllByRole('listitem')
    const words = ['take', 'Equaliser', 'Equaliser', 'Compressor', 'De-esser', 'out', '']
    expect(items).toHaveLength(words.length)
    words.forEach((word, i) => {
      expect(items[i]?.textContent).toContain(word)
    })
    expect(items[3]?.textContent).toMatch(/Compresses \d:1 above −\d+ dBFS, \+8 dB makeup/)
  })

  it('switches a stage off, as one change', async () => {
    const toggle = screen.getByRole('switch', { name: '3 Compressor' })
    await user.click(toggle)
    expect(app.chain.getState().chain.stages[2]?.on).toBe(false)
    expect(toggle.getAttribute('aria-checked')).toBe('false')
    expect(app.chain.getState().past.map(({ words }) => words)).toEqual(['compressor off'])
  })

  it('moves a stage later and earlier, keeps the focus on it, and says where it is', async () => {
    expect(ids()).toEqual(['clean-up', 'lift', 'level', 'sibilance'])
    await user.click(screen.getByRole('button', { name: 'Move Equaliser later' }))
    expect(ids()).toEqual(['lift', 'clean-up', 'level', 'sibilance'])
    expect(screen.getByText('Equaliser, position 2 of 4')).toBeDefined()
    expect(document.activeElement?.getAttribute('aria-label')).toBe('Move Equaliser later')
    await user.click(screen.getByRole('button', { name: 'Move Equaliser earlier' }))
    expect(ids()).toEqual(['clean-up', 'lift', 'level', 'sibilance'])
  })

  it('adds a stage of the chosen kind, at hand and announced', async () => {
    await user.click(screen.getByRole('button', { name: '+ Add stage' }))
    await user.click(screen.getByRole('button', { name: /^Saturator/ }))
    expect(ids()).toEqual(['clean-up', 'lift', 'level', 'sibilance', 'saturator-1'])
    expect(app.chain.getState().selectedId).toBe('saturator-1')
    expect(screen.getByText('Saturator added, position 5 of 5')).toBeDefined()
  })

  it('folds the list of kinds on Escape and gives the focus back', async () => {
    await user.click(screen.getByRole('button', { name: '+ Add stage' }))
    await user.keyboard('{Escape}')
    expect(screen.queryByRole('button', { name: /^Saturator/ })).toBeNull()
    expect(document.activeElement?.textContent).toBe('+ Add stage')
  })

  it('removes the stage at hand, and takes the focus to its neighbour', async () => {
    await user.click(screen.getByRole('button', { name: /^3 ?Compressor/ }))
    await user.click(screen.getByRole('button', { name: 'Remove Compressor' }))
    expect(ids()).toEqual(['clean-up', 'lift', 'sibilance'])
    expect(document.activeElement?.textContent).toContain('De-esser')
  })

  it('can be emptied and begun again', async () => {
    for (let i = 0; i < 4; i++) await user.click(screen.getByRole('button', { name: /^Remove / }))
    expect(ids()).toEqual([])
    expect(screen.getByText(/No stages: the take passes unchanged/)).toBeDefined()
    expect(document.activeElement?.textContent).toBe('+ Add stage')
    expect(screen.queryByRole('slider', { name: 'Listening point' })).toBeNull()
    await user.click(screen.getByRole('button', { name: '+ Add stage' }))
    await user.click(screen.getByRole('button', { name: /^Gain/ }))
    expect(ids()).toEqual(['gain-1'])
  })

  it('moves the listening point by a press on the line behind a stage, and back to the end', async () => {
    expect(pointAt()).toBe('at the end of the chain')
    await user.click(screen.getByRole('button', { name: 'Hear up to here, after 2 Equaliser' }))
    expect(app.listen.getState().listeningPoint).toBe('lift')
    expect(pointAt()).toBe('after 2 Equaliser')
    expect(document.querySelectorAll('[data-stage-id][data-unheard="true"]')).toHaveLength(2)
    await user.click(screen.getByRole('button', { name: 'Hear up to here, at the end of the chain' }))
    expect(pointAt()).toBe('at the end of the chain')
  })

  it('moves the listening point by arrows, Home and End, as one tab stop', async () => {
    point().focus()
    await user.keyboard('{ArrowLeft}')
    expect(app.listen.getState().listeningPoint).toBe('level')
    await user.keyboard('{ArrowLeft}{ArrowDown}')
    expect([pointAt(), point().getAttribute('aria-valuenow')]).toEqual(['after 1 Equaliser', '1'])
    await user.keyboard('{ArrowLeft}{ArrowUp}')
    expect(pointAt()).toBe('after 2 Equaliser')
    await user.keyboard('{Home}')
    expect(pointAt()).toBe('after 1 Equaliser')
    await user.keyboard('{End}')
    expect(app.listen.getState().listeningPoint).toBeNull()
    expect(document.activeElement).toBe(point())
    const stops = screen.getAllByRole('button', { name: /^Hear up to here/ })
    expect(stops.every((stop) => stop.tabIndex === -1)).toBe(true)
  })

  it('drags the listening point along the line, with the finger that took it', () => {
    screen.getAllByRole('button', { name: /^Hear up to here/ }).forEach((gap, i) => {
      gap.getBoundingClientRect = () => new DOMRect(100 * i + 80, 0, 20, 50)
    })
    fireEvent.pointerDown(point(), { button: 0, clientX: 390, clientY: 25, pointerId: 1 })
    fireEvent.pointerMove(window, { clientX: 195, clientY: 90, pointerId: 1 })
    expect(pointAt()).toBe('after 2 Equaliser')
    fireEvent.pointerMove(window, { clientX: 20, clientY: 25, pointerId: 2 })
    expect(pointAt()).toBe('after 2 Equaliser')
    fireEvent.pointerMove(window, { clientX: 20, clientY: 25, pointerId: 1 })
    fireEvent.pointerUp(window, { clientX: 20, clientY: 25, pointerId: 1 })
    fireEvent.pointerMove(window, { clientX: 300, clientY: 25, pointerId: 1 })
    expect(app.listen.getState().listeningPoint).toBe('clean-up')
    expect(app.chain.getState().past).toEqual([])
  })

  it('has the listening point at the end when its stage is gone', async () => {
    await user.click(screen.getByRole('button', { name: /after 1 Equaliser/ }))
    await user.click(screen.getByRole('button', { name: 'Remove Equaliser' }))
    expect(pointAt()).toBe('at the end of the chain')
  })

  it('has the loudness on the line behind each stage that is on and heard, and at both ends', () => {
    const { chain } = app.chain.getState()
    const evidence = evidenceOf(comparisonOf(chain, { kind: 'chain' }))
    act(() => app.evidence.setState({ evidence }))
    const shown = () => screen.queryAllByTitle(/^Integrated loudness here/).map((each) => each.textContent)
    const lufs = (id: string) => plain(evidence.stages.get(id)?.integratedLufs ?? 0, 1)
    expect(shown()).toEqual(['clean-up', 'lift', 'level', 'sibilance'].map((id) => `then ${lufs(id)} LUFS`))
    const out = within(screen.getByRole('list')).getAllByRole('listitem').at(-2)
    expect(out?.textContent).toBe(`out${lufs('sibilance')} LUFS`)
    act(() => app.listening.setListeningPoint('lift'))
    expect(shown()).toHaveLength(2)
  })

  it('marks a true peak above full scale where the sound comes out', () => {
    const evidence = evidenceOf(comparisonOf(app.chain.getState().chain, { kind: 'chain' }))
    const withPeak = (truePeakDbtp: number) => {
      const measures = { ...evidence.processed.measures, truePeakDbtp }
      act(() =>
        app.evidence.setState({ evidence: { ...evidence, processed: { ...evidence.processed, measures } } }),
      )
    }
    withPeak(0)
    expect(screen.queryByText(/^peak/)).toBeNull()
    withPeak(1.23)
    expect(screen.getByText('peak +1.2 dBTP').tagName).toBe('STRONG')
  })

  it('says of its end whose figures it shows while versions are compared, and shows none of them on cards', () => {
    const out = () => within(screen.getByRole('list')).getAllByRole('listitem').at(-2)?.textContent
    const { chain } = app.chain.getState()
    const b = { name: 'boosts last', chain }
    act(() => {
      app.evidence.setState({ evidence: evidenceOf(comparisonOf(chain, { kind: 'chain' })) })
      app.listening.setScope({ kind: 'snapshots', a: null, b })
    })
    expect(out()).toMatch(/^out−/)
    expect(screen.getAllByTitle(/^Integrated loudness here/)).toHaveLength(4)
    act(() => app.chain.getState().edit(switchStage('level', false)))
    expect(out()).toContain('out of \u2068boosts last\u2069')
    expect(screen.queryAllByTitle(/^Integrated loudness here/)).toEqual([])
    act(() => app.listening.setListeningPoint('lift'))
    expect(out()).toContain('not heard')
    act(() => app.listening.setScope({ kind: 'chain' }))
    expect(out()).not.toContain('boosts last')
  })

  it('leaves a drag to the finger that began it', () => {
    placeInLine()
    const [first, second] = screen.getAllByRole('button', { name: /^[12] ?Equaliser/ })
    if (!first || !second) throw new Error('two equalisers stand on the path')
    fireEvent.pointerDown(first, { button: 0, clientX: 50, clientY: 10, pointerId: 1 })
    fireEvent.pointerMove(first, { clientX: 350, clientY: 10, pointerId: 1 })
    // A second finger goes down, moves and is let go, on another stage.
    fireEvent.pointerDown(second, { button: 0, clientX: 150, clientY: 10, pointerId: 2 })
    fireEvent.pointerMove(second, { clientX: 50, clientY: 10, pointerId: 2 })
    fireEvent.pointerUp(second, { pointerId: 2 })
    fireEvent.pointerDown(second, { button: 0, clientX: 150, clientY: 10, pointerId: 3 })
    fireEvent.pointerCancel(second, { pointerId: 3 })
    expect(ids()).toEqual(['clean-up', 'lift', 'level', 'sibilance'])
    expect(first.closest('li')?.getAttribute('data-drop')).toBe('moving')
    fireEvent.pointerUp(first, { pointerId: 1 })
    expect(ids()).toEqual(['lift', 'level', 'sibilance', 'clean-up'])
    expect(app.chain.getState().past).toHaveLength(1)
    expect(screen.getByText('Equaliser, position 4 of 4')).toBeDefined()
  })

  it('says nothing of a move where the stage was removed beneath the pointer', () => {
    placeInLine()
    const compressor = screen.getByRole('button', { name: /^3 ?Compressor/ })
    fireEvent.pointerDown(compressor, { button: 0, clientX: 250, clientY: 10, pointerId: 1 })
    fireEvent.pointerMove(compressor, { clientX: 50, clientY: 10, pointerId: 1 })
    act(() => app.chain.getState().edit(removeStage('level')))
    fireEvent.pointerUp(window, { pointerId: 1 })
    expect(ids()).toEqual(['clean-up', 'lift', 'sibilance'])
    expect(screen.queryByText(/position/)).toBeNull()
  })

  it('takes a short press for choosing, and a drag let go on Escape for nothing', () => {
    const compressor = screen.getByRole('button', { name: /^3 ?Compressor/ })
    fireEvent.pointerDown(compressor, { button: 0, clientX: 0, clientY: 0 })
    fireEvent.pointerMove(window, { clientX: 300, clientY: 0 })
    fireEvent.keyDown(window, { key: 'Escape' })
    fireEvent.pointerUp(window)
    expect(ids()).toEqual(['clean-up', 'lift', 'level', 'sibilance'])
    expect(app.chain.getState().past).toEqual([])
  })
})
