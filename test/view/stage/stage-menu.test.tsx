import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { chainOf, chainToJson, parseChain } from '../../../src/core'
import type { App } from '../../../src/session/app'
import { SelectedStage } from '../../../src/view/stage/selected-stage'
import { showInApp } from '../chain/in-app'

let app: App
// Brings a clipboard of its own.
let user: ReturnType<typeof userEvent.setup>
const stages = () => app.chain.getState().chain.stages
const ids = () => stages().map(({ id }) => id)
const press = async (name: string) => {
  await user.click(screen.getByRole('button', { name: 'Stage' }))
  await user.click(screen.getByRole('button', { name }))
}
// Said once, and seen where it is said: beside the menu.
const spoken = async (words: string | RegExp) => {
  const news = await screen.findByText(words, { exact: false })
  expect(news.getAttribute('aria-live')).toBe('polite')
  expect(news.nextElementSibling).toBe(
    screen.getByRole('button', { name: 'Stage' }).closest('span')?.parentElement,
  )
}
const paste = async (text: string) => {
  await navigator.clipboard.writeText(text)
  await press('Paste a stage from the clipboard')
}

beforeEach(() => {
  user = userEvent.setup()
  app = showInApp(<SelectedStage />)
  act(() => app.chain.getState().select('level'))
})
afterEach(cleanup)

describe('the menu of the selected stage', () => {
  it('duplicate and reset it', async () => {
    await press('Duplicate 3 Compressor')
    expect(ids()).toEqual(['clean-up', 'lift', 'level', 'compressor-1', 'sibilance'])
    await press('Reset 4 Compressor')
    expect(stages()[3]?.settings).toMatchObject({ thresholdDb: -24 })
  })

  it('move and remove it, and keep the focus', async () => {
    await press('Move 3 Compressor earlier')
    expect(ids()).toEqual(['clean-up', 'level', 'lift', 'sibilance'])
    await spoken('Compressor, position 2 of 4')
    expect(document.activeElement?.textContent).toBe('Stage')
    await press('Move 2 Compressor later')
    await press('Remove 3 Compressor')
    expect(ids()).toEqual(['clean-up', 'lift', 'sibilance'])
    await spoken('Compressor removed')
    expect(document.activeElement?.textContent).toBe('Stage')
  })

  it('do nothing where there is nowhere to move to', async () => {
    act(() => app.chain.getState().select('clean-up'))
    await press('Move 1 Equaliser earlier')
    expect(app.chain.getState().past).toEqual([])
  })

  it('copy it as the text of a chain that has it alone', async () => {
    await press('Copy the settings of 3 Compressor')
    const copied = parseChain(JSON.parse(await navigator.clipboard.readText()))
    expect(copied.stages).toEqual([stages()[2]])
  })

  it('paste it behind the selected stage, under a name of its own, as one change', async () => {
    await press('Copy the settings of 3 Compressor')
    act(() => app.chain.getState().select('clean-up'))
    await press('Paste a stage from the clipboard')
    expect(ids()).toEqual(['clean-up', 'compressor-1', 'lift', 'level', 'sibilance'])
    expect(stages()[1]?.settings).toEqual(stages()[3]?.settings)
    expect(app.chain.getState().past.map(({ words }) => words)).toEqual(['paste compressor'])
  })

  it('paste into an empty chain', async () => {
    await press('Copy the settings of 3 Compressor')
    act(() => app.chain.getState().edit(() => ({ chain: chainOf([]), words: 'empty' })))
    await press('Paste a stage from the clipboard')
    expect(ids()).toEqual(['compressor-1'])
  })

  it.each([
    ['words', 'good morning', 'The clipboard holds no stage. Copy a stage first, then paste it.'],
    [
      'an empty chain',
      chainToJson(chainOf([])),
      'The clipboard holds a chain without a stage. Copy a stage first.',
    ],
    ['another object', '{"stages": 3}', 'What the clipboard holds cannot be a stage.'],
  ])('say why %s cannot be pasted, and change nothing', async (_, text, reason) => {
    await paste(text)
    await spoken(reason)
    expect(app.chain.getState().past).toEqual([])
  })

  it('refuse settings out of range', async () => {
    const text = chainToJson(app.chain.getState().chain).replace('"ratio": 3', '"ratio": 0.1')
    await paste(text)
    await spoken(/settings\.ratio: expected/)
    expect(app.chain.getState().past).toEqual([])
  })
})
