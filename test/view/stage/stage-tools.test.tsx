import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { chainOf, chainToJson, parseChain, stageDefinitions } from '../../../src/core'
import type { App } from '../../../src/session/app'
import { SelectedStage } from '../../../src/view/stage/selected-stage'
import { showInApp } from '../chain/in-app'

let app: App
// Brings a clipboard of its own.
let user: ReturnType<typeof userEvent.setup>
const stages = () => app.chain.getState().chain.stages
const ids = () => stages().map(({ id }) => id)
const press = (name: string) => user.click(screen.getByRole('button', { name }))
// Said once, and seen where it is said: beside the buttons.
const spoken = async (words: string | RegExp) => {
  const news = await screen.findByText(words, { exact: false })
  expect(news.getAttribute('aria-live')).toBe('polite')
  expect(news.nextElementSibling).toBe(screen.getByRole('button', { name: /^Paste/ }).parentElement)
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

describe('the tools of the stage at hand', () => {
  it('duplicate and reset it', async () => {
    await press('Duplicate Compressor')
    expect(ids()).toEqual(['clean-up', 'lift', 'level', 'compressor-1', 'sibilance'])
    await press('Reset Compressor')
    expect(stages()[3]?.settings).toMatchObject({ thresholdDb: -24 })
  })

  it('copy it as the text of a chain that has it alone', async () => {
    await press('Copy the settings of Compressor')
    const copied = parseChain(JSON.parse(await navigator.clipboard.readText()))
    expect(copied.stages).toEqual([stages()[2]])
  })

  it('paste it behind the stage at hand, under a name of its own, as one change', async () => {
    await press('Copy the settings of Compressor')
    act(() => app.chain.getState().select('clean-up'))
    await press('Paste a stage from the clipboard')
    expect(ids()).toEqual(['clean-up', 'compressor-1', 'lift', 'level', 'sibilance'])
    expect(stages()[1]?.settings).toEqual(stages()[3]?.settings)
    expect(app.chain.getState().past.map(({ words }) => words)).toEqual(['paste compressor'])
  })

  it('paste into an empty chain', async () => {
    await press('Copy the settings of Compressor')
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

describe('help', () => {
  const { purpose } = stageDefinitions.equaliser
  const controls = () =>
    (['slider', 'textbox', 'combobox', 'switch'] as const).flatMap((role) => screen.getAllByRole(role))

  it('is told for every control of a stage and of its bands on focus', () => {
    act(() => app.chain.getState().select('clean-up'))
    const count = controls().length
    expect(count).toBeGreaterThan(10)
    for (let n = 0; n < count; n++) {
      // Another stage at hand forgets what was told last.
      act(() => app.chain.getState().select('level'))
      act(() => app.chain.getState().select('clean-up'))
      expect(screen.queryByText(purpose)).not.toBeNull()
      act(() => controls()[n]?.focus())
      expect(screen.queryByText(purpose), controls()[n]?.outerHTML).toBeNull()
    }
  })
})
