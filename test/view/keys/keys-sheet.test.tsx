import { cleanup, fireEvent, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { App } from '../../../src/session/app'
import { setSetting, switchStage } from '../../../src/session/chain/chain-edits'
import { useApp, useChain } from '../../../src/view/context/app-context'
import type { ScreenState } from '../../../src/view/context/screen-store'
import { NumberField } from '../../../src/view/controls/number-field'
import { KeysSheet } from '../../../src/view/keys/keys-sheet'
import { useKeys } from '../../../src/view/keys/use-keys'
import { numberParameter } from '../controls/parameters'
import { showOnPage } from './on-page'

let app: App
let page: ReturnType<typeof showOnPage>
const user = userEvent.setup()
const setScreen = (state: Partial<ScreenState>) => page.screen.setState(state)

function PageKeys() {
  useKeys()
  return null
}

/** A field of the bench: the threshold of the stage called "level". */
function Threshold() {
  const { chain } = useApp()
  const stage = useChain((state) => state.chain.stages.find(({ id }) => id === 'level'))
  if (stage?.kind !== 'compressor') return null
  return (
    <NumberField
      parameter={numberParameter('compressor thresholdDb')}
      value={stage.settings.thresholdDb}
      label="Threshold, typed"
      onChange={(value) => chain.getState().edit(setSetting('level', 'thresholdDb', value))}
      onRest={() => chain.getState().endGesture()}
    />
  )
}

beforeEach(() => {
  page = showOnPage(
    <>
      <KeysSheet />
      <PageKeys />
      <button type="button">some button</button>
      <input aria-label="some field" />
      <select aria-label="some list" />
      <Threshold />
    </>,
  )
  app = page.app
})
afterEach(cleanup)

describe('keys', () => {
  it('switch sides, stages, scope and matching; S, M and R do nothing', async () => {
    await user.keyboard('x]]e')
    expect(app.listen.getState()).toMatchObject({ heard: 'bypassed', matched: false })
    expect(app.chain.getState().selectedId).toBe('level')
    await user.keyboard('smr')
    expect(app.listen.getState()).toMatchObject({
      heard: 'bypassed',
      matched: false,
      scope: { kind: 'chain' },
    })
    await user.keyboard('c')
    expect(app.listen.getState().scope).toEqual({ kind: 'stage', stageId: 'level' })
  })

  it('stop at both ends of the chain', async () => {
    await user.keyboard('[[')
    expect(app.chain.getState().selectedId).toBe('clean-up')
    await user.keyboard(']]]]]]]]')
    expect(app.chain.getState().selectedId).toBe('sibilance')
  })

  it('switch and move the selected stage, and say so', async () => {
    await user.keyboard(']n')
    expect(app.chain.getState().chain.stages[1]?.on).toBe(false)
    expect(page.screen.getState().said?.words).toBe('2 Equaliser off')
    await user.keyboard(',')
    expect(app.chain.getState().chain.stages[0]?.id).toBe('lift')
    await user.keyboard(',..')
    expect(app.chain.getState().chain.stages[2]?.id).toBe('lift')
    expect(page.screen.getState().said?.words).toBe('Equaliser, position 3 of 4')
  })

  it('store versions under names that are free, and replace none', async () => {
    await user.keyboard('k')
    const first = app.chain.getState().snapshots.a
    expect(first).not.toBeNull()
    await user.keyboard('nk')
    const second = app.chain.getState().snapshots.b
    expect(second?.chain).toBe(app.chain.getState().chain)
    await user.keyboard('nk')
    expect(app.chain.getState().snapshots).toEqual({ a: first, b: second })
    expect(page.screen.getState().said?.words).toContain('both stored')
  })

  it('set both ends of the loop where the take is', async () => {
    app.listening.seek(16_000)
    await user.keyboard('f')
    expect(app.listen.getState().loop).toEqual({ from: 16_000, to: 48_000 })
    app.listening.seek(24_000)
    await user.keyboard('g')
    expect(app.listen.getState().loop).toEqual({ from: 16_000, to: 24_000 })
  })

  it('open the deliver sheet', async () => {
    await user.keyboard('d')
    expect(page.screen.getState().sheet).toBe('deliver')
  })

  it('do nothing while text is typed', async () => {
    await user.type(screen.getByRole('textbox', { name: 'some field' }), 'mix')
    expect(app.listen.getState()).toMatchObject({ heard: 'processed', matched: true })
  })

  it('leave Space to a button that has the focus, and letters not', async () => {
    const toggle = vi.spyOn(app.listening, 'togglePlay').mockResolvedValue()
    screen.getByRole('button', { name: 'some button' }).focus()
    await user.keyboard(' x')
    expect(toggle).not.toHaveBeenCalled()
    expect(app.listen.getState().heard).toBe('bypassed')
  })

  it('play with Space everywhere else, once', async () => {
    const toggle = vi.spyOn(app.listening, 'togglePlay').mockResolvedValue()
    await user.keyboard(' ')
    expect(toggle).toHaveBeenCalledTimes(1)
  })

  it('undo and redo, even when single keys are switched off', async () => {
    app.chain.getState().edit(switchStage('level', false))
    setScreen({ singleKeys: false })
    await user.keyboard('x{Control>}z{/Control}')
    expect(app.listen.getState().heard).toBe('processed')
    expect(app.chain.getState().past).toEqual([])
    await user.keyboard('{Control>}{Shift>}Z{/Shift}{/Control}')
    expect(app.chain.getState().past.map(({ words }) => words)).toEqual(['compressor off'])
  })

  it('undo and redo what was typed in a field that still has the focus, and leave what is being typed alone', async () => {
    const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Threshold, typed' })
    const threshold = () => app.chain.getState().chain.stages.find(({ id }) => id === 'level')?.settings
    const first = field.value
    const before = threshold()
    await user.clear(field)
    await user.type(field, '-31{Enter}')
    expect(threshold()).toMatchObject({ thresholdDb: -31 })
    await user.keyboard('{Control>}z{/Control}')
    expect(document.activeElement).toBe(field)
    expect(field.value).toBe(first)
    await user.keyboard('{Control>}y{/Control}')
    expect(threshold()).toMatchObject({ thresholdDb: -31 })
    await user.type(field, '2')
    await user.keyboard('{Control>}z{/Control}')
    expect(threshold()).toMatchObject({ thresholdDb: -31 })
    await user.keyboard('{Escape}{Control>}z{/Control}')
    expect(threshold()).toEqual(before)
  })

  it('work in a number field whose value was taken, all but those that begin another', async () => {
    const toggle = vi.spyOn(app.listening, 'togglePlay').mockResolvedValue()
    const field = screen.getByRole<HTMLInputElement>('textbox', { name: 'Threshold, typed' })
    await user.clear(field)
    await user.type(field, '-31{Enter}')
    expect(document.activeElement).toBe(field)
    await user.keyboard(' x')
    expect(toggle).toHaveBeenCalledTimes(1)
    expect(app.listen.getState().heard).toBe('bypassed')
    expect(field.value).toBe('−31.0 dBFS')
    await user.keyboard('-3x')
    expect(field.value).toBe('-3x')
    expect(app.listen.getState().heard).toBe('bypassed')
    await user.keyboard('{Escape}x')
    expect(document.activeElement).toBe(document.body)
    expect(app.listen.getState().heard).toBe('processed')
  })

  it('undo with a list in focus, which keeps letters for itself', async () => {
    app.chain.getState().edit(switchStage('level', false))
    screen.getByRole('combobox', { name: 'some list' }).focus()
    await user.keyboard('x{Control>}z{/Control}')
    expect(app.listen.getState().heard).toBe('processed')
    expect(app.chain.getState().past).toEqual([])
  })

  it('stand on their sheet, those of a blind trial too', async () => {
    await user.keyboard('?')
    const printed = screen.getAllByRole('table').map((table) => table.textContent)
    expect(printed[0]).toContain('Ctrl or Cmd Shift Z')
    expect(printed[1]).toMatch(/1, 2, 3.*←, →.*Enter.*Esc/)
    expect(screen.getByRole('heading', { name: 'In a blind trial' })).toBeDefined()
  })

  it('keep still while a sheet is open, and whoever used a press keeps it', async () => {
    await user.keyboard('?')
    expect(page.screen.getState().sheet).toBe('keys')
    await user.keyboard('x')
    expect(app.listen.getState().heard).toBe('processed')
    setScreen({ sheet: null })
    const used = new KeyboardEvent('keydown', { key: 'x', bubbles: true, cancelable: true })
    used.preventDefault()
    fireEvent(document.body, used)
    expect(app.listen.getState().heard).toBe('processed')
  })
})
