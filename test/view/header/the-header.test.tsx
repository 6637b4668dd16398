import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { switchStage } from '../../../src/session/chain/chain-edits'
import { TheHeader } from '../../../src/view/header/the-header'
import { showOnPage, take } from '../keys/on-page'

let page: ReturnType<typeof showOnPage>
const user = userEvent.setup()

beforeEach(() => {
  page = showOnPage(<TheHeader />)
})
afterEach(cleanup)

describe('the header', () => {
  it('names the take and says that audio never leaves the computer', async () => {
    const { textContent } = await screen.findByRole('banner')
    expect(textContent).toContain('Take 3.wav · 0:10.0 · 8 kHz · mono')
    expect(textContent).toContain('Your audio never leaves this computer')
  })

  it('undoes and redoes, with the change in words', async () => {
    act(() => page.app.chain.getState().edit(switchStage('level', false)))
    await user.click(screen.getByRole('button', { name: 'Undo: compressor off' }))
    expect(page.app.chain.getState().chain.stages[2]?.on).toBe(true)
    await user.click(screen.getByRole('button', { name: 'Redo: compressor off' }))
    expect(page.app.chain.getState().chain.stages[2]?.on).toBe(false)
  })

  it('changes the paper', async () => {
    await user.selectOptions(screen.getByRole('combobox', { name: 'Theme' }), 'dark')
    expect(document.documentElement.dataset.theme).toBe('dark')
  })

  it('switches the projector view on and off', async () => {
    await user.click(screen.getByRole('button', { name: 'Projector' }))
    expect(document.documentElement.dataset.view).toBe('projector')
    await user.click(screen.getByRole('button', { name: 'Leave projector' }))
    expect(document.documentElement.dataset.view).toBe('desk')
  })

  it('tells of samples that had to be replaced', async () => {
    act(() => page.app.take.setState({ take: { ...take, replacedSamples: 7 } }))
    expect(screen.getByText('7')).toBeDefined()
  })
})
