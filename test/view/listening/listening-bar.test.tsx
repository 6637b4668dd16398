import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { App } from '../../../src/session/app'
import { setBand } from '../../../src/session/chain/chain-edits'
import { ListeningBar } from '../../../src/view/listening/listening-bar'
import { showOnPage, sound } from '../keys/on-page'

let app: App
let page: ReturnType<typeof showOnPage>
const user = userEvent.setup()
const listen = () => app.listen.getState()
const radio = (name: string) => screen.getByRole<HTMLInputElement>('radio', { name })

beforeEach(() => {
  page = showOnPage(<ListeningBar />)
  app = page.app
})
afterEach(cleanup)

describe('the listening bar', () => {
  it('switches sides', async () => {
    await user.click(radio('without'))
    expect(listen()).toMatchObject({ side: 'bypassed', heard: 'bypassed' })
    await user.click(radio('with'))
    expect(listen().heard).toBe('processed')
  })

  it('compares the selected stage, by its number, whichever that becomes, and the whole chain again', async () => {
    await user.click(radio('stage 1'))
    expect(listen().scope).toEqual({ kind: 'stage', stageId: 'clean-up' })
    act(() => app.chain.getState().select('level'))
    expect(listen().scope).toEqual({ kind: 'stage', stageId: 'level' })
    expect(radio('stage 3').checked).toBe(true)
    await user.click(radio('whole chain'))
    act(() => app.chain.getState().select('lift'))
    expect(listen().scope).toEqual({ kind: 'chain' })
  })

  it('names a band while one is compared, and goes back to its stage', async () => {
    act(() => app.listening.setScope({ kind: 'band', stageId: 'clean-up', bandIndex: 1 }))
    expect(radio('band 1b').checked).toBe(true)
    await user.click(radio('stage 1'))
    expect(listen().scope).toEqual({ kind: 'stage', stageId: 'clean-up' })
    expect(radio('one band').checked).toBe(false)
  })

  it('compares the first band that is on, and none of a stage without bands', async () => {
    act(() => app.chain.getState().edit(setBand('clean-up', 0, { on: false })))
    await user.click(radio('one band'))
    expect(listen().scope).toEqual({ kind: 'band', stageId: 'clean-up', bandIndex: 1 })
    act(() => app.chain.getState().select('level'))
    expect(radio('one band').disabled).toBe(true)
  })

  it('says what the switch compares', () => {
    expect(screen.getByText('the whole chain')).toBeDefined()
    act(() => app.listening.setScope({ kind: 'stage', stageId: 'clean-up' }))
    expect(screen.getByText('1 Equaliser')).toBeDefined()
  })

  it('offers the backing only when there is one', async () => {
    expect(radio('with backing').disabled).toBe(true)
    act(() => app.take.setState({ backing: { name: 'Band.wav', sound } }))
    await user.click(radio('with backing'))
    expect(listen().backingOn).toBe(true)
  })

  it('folds the backing’s settings on Escape and gives the focus back', async () => {
    act(() => app.take.setState({ backing: { name: 'Band.wav', sound } }))
    const opener = screen.getByRole('button', { name: 'level' })
    await user.click(opener)
    expect(opener.getAttribute('aria-expanded')).toBe('true')
    screen.getByRole('slider', { name: 'Backing, Level' }).focus()
    await user.keyboard('{Escape}')
    expect(opener.getAttribute('aria-expanded')).toBe('false')
    expect(document.activeElement).toBe(opener)
  })

  it('folds what a press elsewhere leaves, and says on its button what is chosen', async () => {
    const opener = screen.getByRole('button', { name: 'whole chain' })
    const isOpen = () => opener.getAttribute('aria-expanded')
    await user.click(opener)
    expect(isOpen()).toBe('true')
    await user.click(screen.getByText('0:00.0'))
    expect(isOpen()).toBe('false')
    await user.click(radio('stage 1'))
    expect(opener.textContent).toBe('stage 1')
  })

  it('goes from the difference back to the side that was heard', async () => {
    await user.click(radio('without'))
    const difference = screen.getByRole('switch', { name: 'difference only' })
    await user.click(difference)
    expect(listen().heard).toBe('difference')
    // While the difference sounds neither side is heard, and neither is shown as heard.
    expect([radio('without').checked, radio('with').checked]).toEqual([false, false])
    await user.click(difference)
    expect(listen().heard).toBe('bypassed')
  })

  it('says how the sides are matched, and on the button of what is folded that neither is heard', () => {
    const matched = () => screen.getByRole('checkbox', { name: /^matched/ }).closest('label')?.textContent
    expect(matched()).toBe('matched: …')
    act(() => app.listening.setMatched(false))
    expect(matched()).toBe('matched: off')
    act(() => app.listening.setDifference(true))
    expect(screen.getByRole('button', { name: 'difference' })).toBeDefined()
  })

  it('switches the loop off and on again as it was', async () => {
    act(() => app.listening.setLoop({ from: 8000, to: 24_000 }))
    await user.click(screen.getByRole('button', { name: 'loop on' }))
    expect(listen().loop).toBeNull()
    await user.click(screen.getByRole('button', { name: 'loop off' }))
    expect(listen().loop).toEqual({ from: 8000, to: 24_000 })
  })

  it.each([null, { from: 8000, to: 90_000 }])(
    'repeats the whole take where the last loop was %o',
    async (lastLoop) => {
      app.listen.setState({ lastLoop })
      await user.click(screen.getByRole('button', { name: 'loop off' }))
      expect(listen().loop).toEqual({ from: 0, to: 80_000 })
    },
  )

  it('starts quietly and keeps the volume out of the chain', () => {
    expect(screen.getByRole('slider', { name: 'Monitor volume' }).getAttribute('aria-valuetext')).toMatch(
      /^minus 18 decibels/,
    )
    act(() => app.listening.setMonitorDb(-30))
    expect(screen.getByText(/monitor −30 dB/)).toBeDefined()
    expect(app.chain.getState().past).toEqual([])
  })
})
