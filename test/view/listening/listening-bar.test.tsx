import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { App } from '../../../src/session/app'
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

  it('compares the stage at hand, whichever that becomes, and the whole chain again', async () => {
    await user.click(radio('this stage'))
    expect(listen().scope).toEqual({ kind: 'stage', stageId: 'clean-up' })
    act(() => app.chain.getState().select('level'))
    expect(listen().scope).toEqual({ kind: 'stage', stageId: 'level' })
    await user.click(radio('the whole chain'))
    act(() => app.chain.getState().select('lift'))
    expect(listen().scope).toEqual({ kind: 'chain' })
  })

  it('names a band while one is compared, and goes back to its stage', async () => {
    act(() => app.listening.setScope({ kind: 'band', stageId: 'clean-up', bandIndex: 1 }))
    expect(radio('this band').checked).toBe(true)
    await user.click(radio('this stage'))
    expect(listen().scope).toEqual({ kind: 'stage', stageId: 'clean-up' })
    expect(screen.queryByRole('radio', { name: 'this band' })).toBeNull()
  })

  it('offers the backing only when there is one', async () => {
    expect(radio('with the backing').disabled).toBe(true)
    act(() => app.take.setState({ backing: { name: 'Band.wav', sound } }))
    await user.click(radio('with the backing'))
    expect(listen().backingOn).toBe(true)
  })

  it('folds the backing’s settings on Escape and gives the focus back', async () => {
    act(() => app.take.setState({ backing: { name: 'Band.wav', sound } }))
    const words = screen.getByText(/level, offset/)
    const details = words.closest('details')
    await user.click(words)
    expect(details?.open).toBe(true)
    screen.getByRole('slider', { name: 'Backing, Level' }).focus()
    await user.keyboard('{Escape}')
    expect(details?.open).toBe(false)
    expect(document.activeElement).toBe(words)
  })

  it('goes from the difference back to the side that was heard', async () => {
    await user.click(radio('without'))
    const difference = screen.getByRole('checkbox', { name: /difference\s*only/ })
    await user.click(difference)
    expect(listen().heard).toBe('difference')
    // While the difference sounds neither side is heard, and neither is shown as heard.
    expect([radio('without').checked, radio('with').checked]).toEqual([false, false])
    await user.click(difference)
    expect(listen().heard).toBe('bypassed')
  })

  it('says in one line what is folded away: by how much sides are matched, and that neither is heard', async () => {
    const line = () => screen.queryByText(/^(not )?matched: (each|not measured)|neither side$/)?.textContent
    expect(line()).toBe('matched: not measured yet')
    act(() => app.listening.setMatched(false))
    expect(line()).toBe('not matched: each side at its own level')
    act(() => app.listening.setDifference(true))
    expect(line()).toBe('You hear the difference only, neither side')
    await user.click(screen.getByRole('button', { name: 'what is compared' }))
    expect(line()).toBeUndefined()
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
