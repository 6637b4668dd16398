import { act, cleanup, screen, within } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { comparisonOf, measure } from '../../../src/core'
import { switchStage } from '../../../src/session/chain/chain-edits'
import { TheHeader } from '../../../src/view/header/the-header'
import { evidenceOf } from '../../session/trials/trial-app'
import { showOnPage, sound, take } from '../keys/on-page'

let page: ReturnType<typeof showOnPage>
const user = userEvent.setup()

beforeEach(() => {
  page = showOnPage(<TheHeader />)
})
afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
})

describe('the header', () => {
  it('goes to the first clipped samples', async () => {
    const { app } = page
    const clippedSamples = 12
    const marks = { sibilants: [], clipped: [{ from: 24_000, to: 24_012 }] }
    act(() =>
      app.take.setState({ take: { ...take, measures: { ...measure(sound), clippedSamples }, marks } }),
    )
    await user.click(screen.getByRole('button', { name: 'clipped 12' }))
    expect(app.listen.getState().positionFrame).toBe(24_000)
  })

  it('names the take with its facts, and opens what can be opened, with where audio stays', async () => {
    const facts = screen.getByRole('list', { name: 'The unprocessed take' })
    expect(
      within(facts)
        .getAllByRole('listitem')
        .map(({ textContent }) => textContent),
    ).toEqual(['0:10.0', '8 kHz', 'mono'])
    const opener = screen.getByRole('button', { name: 'Take: Take 3.wav' })
    await user.click(opener)
    for (const name of [/^Open take/, /^Open backing/, 'Open the demo'])
      expect(screen.getByRole('button', { name })).toBeDefined()
    expect(screen.getByText('Your audio never leaves this computer')).toBeDefined()
    const openDemo = vi.spyOn(page.app.takes, 'openDemo').mockResolvedValue('in')
    await user.click(screen.getByRole('button', { name: 'Open the demo' }))
    expect(openDemo).toHaveBeenCalledTimes(1)
    expect(document.activeElement).toBe(opener)
  })

  it('undoes and redoes, with the change in words', async () => {
    act(() => page.app.chain.getState().edit(switchStage('level', false)))
    await user.click(screen.getByRole('button', { name: 'Undo: compressor off' }))
    expect(page.app.chain.getState().chain.stages[2]?.on).toBe(true)
    await user.click(screen.getByRole('button', { name: 'Redo: compressor off' }))
    expect(page.app.chain.getState().chain.stages[2]?.on).toBe(false)
  })

  it('changes the paper', async () => {
    await user.click(screen.getByRole('button', { name: 'More' }))
    await user.click(screen.getByRole('radio', { name: 'dark' }))
    expect(document.documentElement.dataset.theme).toBe('dark')
  })

  it('switches the projector view on and off', async () => {
    await user.click(screen.getByRole('button', { name: 'More' }))
    await user.click(screen.getByRole('button', { name: /^Projector view/ }))
    expect(document.documentElement.dataset.view).toBe('projector')
    await user.click(screen.getByRole('button', { name: 'Leave projector' }))
    expect(document.documentElement.dataset.view).toBe('desk')
  })

  it('brings the note on care for ears back', async () => {
    act(() => page.screen.setState({ careNoteRead: true }))
    await user.click(screen.getByRole('button', { name: 'More' }))
    await user.click(screen.getByRole('button', { name: 'Care for ears' }))
    expect(page.screen.getState().careNoteRead).toBe(false)
  })

  it('tells of an output above full scale, and leads to where it can be lowered', async () => {
    const { chain } = page.app.chain.getState()
    const evidence = evidenceOf(comparisonOf(chain, { kind: 'chain' }))
    const measures = { ...evidence.processed.measures, truePeakDbtp: 1.23 }
    const processed = { ...evidence.processed, measures }
    act(() => page.app.evidence.setState({ evidence: { ...evidence, processed } }))
    await user.click(screen.getByRole('button', { name: 'output +1.2 dBTP' }))
    expect(page.screen.getState().sheet).toBe('deliver')
  })

  it('tells of samples that had to be replaced', async () => {
    act(() => page.app.take.setState({ take: { ...take, replacedSamples: 7 } }))
    expect(screen.getByText('7 invalid samples silenced')).toBeDefined()
  })
})
