import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it } from 'vitest'
import { type ChainEdit, removeStage, setBand, switchStage } from '../../../src/session/chain/chain-edits'
import { ListeningBar } from '../../../src/view/listening/listening-bar'
import { showOnPage } from '../keys/on-page'

const user = userEvent.setup()
afterEach(cleanup)

describe('the notes of the listening bar', () => {
  it('say that a stage after the listening point cannot be compared, and move that point', async () => {
    const { app } = showOnPage(<ListeningBar />)
    act(() => {
      app.chain.getState().select('level')
      app.listening.setListeningPoint('clean-up')
      app.listening.setScope({ kind: 'stage', stageId: 'level' })
    })
    expect(
      screen.getByText(/^Nothing to compare: 3 Compressor comes after the listening point/),
    ).toBeDefined()
    await user.click(screen.getByRole('button', { name: 'hear up to it' }))
    expect(app.listen.getState().listeningPoint).toBe('level')
    expect(screen.queryByText(/^Nothing to compare/)).toBeNull()
  })

  it('say that what is compared is off, and switch it on', async () => {
    const { app } = showOnPage(<ListeningBar />)
    const edit = (change: ChainEdit) => act(() => app.chain.getState().edit(change))
    const on = () => screen.queryByRole('button', { name: 'switch it on' })
    act(() => app.listening.setScope({ kind: 'stage', stageId: 'clean-up' }))
    expect(screen.queryByText(/^Nothing to compare/)).toBeNull()
    edit(switchStage('clean-up', false))
    expect(screen.getByText(/^Nothing to compare: 1 Equaliser is off/)).toBeDefined()
    await user.click(screen.getByRole('button', { name: 'switch it on' }))
    expect(app.chain.getState().chain.stages[0]?.on).toBe(true)
    expect(screen.queryByText(/^Nothing to compare/)).toBeNull()
    expect(document.activeElement).toBe(screen.getByRole('region', { name: 'Listening' }))

    act(() => app.listening.setScope({ kind: 'band', stageId: 'clean-up', bandIndex: 1 }))
    edit(setBand('clean-up', 0, { on: false }))
    expect(screen.queryByText(/^Nothing to compare/)).toBeNull()
    edit(setBand('clean-up', 1, { on: false }))
    expect(screen.getByText(/^Nothing to compare: band 1b is off/)).toBeDefined()
    await user.click(screen.getByRole('button', { name: 'switch it on' }))
    expect(app.chain.getState().chain.stages[0]?.settings).toMatchObject({
      bands: [{ on: false }, { on: true }],
    })
    expect(on()).toBeNull()
  })

  it('say that a chain with nothing on cannot be compared, and move the listening point where that helps', async () => {
    const { app } = showOnPage(<ListeningBar />)
    const edit = (change: ChainEdit) => act(() => app.chain.getState().edit(change))
    act(() => app.listening.setListeningPoint('clean-up'))
    edit(switchStage('clean-up', false))
    expect(
      screen.getByText(/^Nothing to compare: all stages up to the listening point are off/),
    ).toBeDefined()
    await user.click(screen.getByRole('button', { name: 'hear the whole chain' }))
    expect(app.listen.getState().listeningPoint).toBeNull()
    expect(screen.queryByText(/^Nothing to compare/)).toBeNull()
    for (const id of ['lift', 'level', 'sibilance']) edit(switchStage(id, false))
    expect(screen.getByText('Nothing to compare: all stages are off.')).toBeDefined()
    for (const id of ['clean-up', 'lift', 'level', 'sibilance']) edit(removeStage(id))
    expect(screen.getByText('Nothing to compare: the chain has no stages.')).toBeDefined()
  })

  it('say that a change is not in what is heard, and let it be heard', async () => {
    const { app } = showOnPage(<ListeningBar />)
    const change = (on: boolean) => act(() => app.chain.getState().edit(switchStage('level', on)))
    change(false)
    expect(screen.queryByText(/does not include this change/)).toBeNull()
    act(() => app.listening.setSide('bypassed'))
    change(true)
    expect(screen.getByText(/^You hear “without”, which does not include this change/)).toBeDefined()
    await user.click(screen.getByRole('button', { name: 'hear with' }))
    expect(app.listen.getState().heard).toBe('processed')
    expect(screen.queryByText(/does not include this change/)).toBeNull()
  })

  it('know which changes are heard all the same', () => {
    const { app } = showOnPage(<ListeningBar />)
    act(() => {
      app.listening.setScope({ kind: 'stage', stageId: 'clean-up' })
      app.listening.setSide('bypassed')
      app.chain.getState().edit(switchStage('level', false))
    })
    expect(screen.queryByText(/does not include this change/)).toBeNull()
    act(() => app.chain.getState().edit(switchStage('clean-up', false)))
    expect(screen.getByText(/^You hear “without”/)).toBeDefined()
    const { chain } = app.chain.getState()
    act(() => app.listening.setScope({ kind: 'snapshots', a: { name: '', chain }, b: null }))
    expect(screen.queryByText(/does not include this change/)).toBeNull()
    act(() => app.chain.getState().edit(switchStage('clean-up', true)))
    expect(screen.getByText(/^You hear “A”/)).toBeDefined()
    act(() => app.listening.setSide('processed'))
    expect(screen.queryByText(/does not include this change/)).toBeNull()
  })
})
