import { cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it } from 'vitest'
import { setSetting } from '../../../src/session/chain/chain-edits'
import { TheChain } from '../../../src/view/chain/the-chain'
import { ListeningBar } from '../../../src/view/listening/listening-bar'
import { showOnPage } from '../keys/on-page'

const user = userEvent.setup()
const choose = async (label: RegExp) => {
  await user.click(screen.getByRole('button', { name: 'Store version' }))
  await user.click(screen.getByRole('button', { name: label }))
}

afterEach(cleanup)

describe('storing versions', () => {
  it('stores, compares and names both sides by what they are', async () => {
    const { app } = showOnPage(
      <>
        <TheChain />
        <ListeningBar />
      </>,
    )
    expect(screen.queryByRole('radio', { name: 'versions' })).toBeNull()
    await choose(/^Store as A/)
    app.chain.getState().edit(setSetting('level', 'ratio', 8))
    await user.click(screen.getByRole('radio', { name: 'versions' }))
    expect(screen.getByRole('radio', { name: 'A' })).toBeDefined()
    expect(screen.getByRole('radio', { name: 'now' })).toBeDefined()
    await choose(/^Store as B/)
    expect(screen.getByRole('radio', { name: 'B' })).toBeDefined()
    await choose(/^Go back to A/)
    expect(app.chain.getState().past.map(({ words }) => words)).toEqual([
      'stored as A',
      expect.stringContaining('ratio'),
      'stored as B',
      'back to A',
    ])
    await choose(/^Discard A/)
    expect(screen.getByRole('radio', { name: 'now' })).toBeDefined()
    expect(app.chain.getState().snapshots.a).toBeNull()
    await choose(/^Discard B/)
    expect(screen.queryByRole('radio', { name: 'versions' })).toBeNull()
    expect(app.listen.getState().scope).toEqual({ kind: 'chain' })
    expect(screen.getByRole('radio', { name: 'without' })).toBeDefined()
  })
})
