import { cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { App } from '../../../src/session/app'
import { setSetting } from '../../../src/session/chain/chain-edits'
import { TheChain } from '../../../src/view/chain/the-chain'
import { ListeningBar } from '../../../src/view/listening/listening-bar'
import { showOnPage } from '../keys/on-page'

const user = userEvent.setup()
let app: App
const chip = (name: string) => screen.getByRole('button', { name })
const choose = async (letter: 'A' | 'B', entry: RegExp) => {
  await user.click(chip(`Version ${letter}`))
  await user.click(screen.getByRole('button', { name: entry }))
}
const name = async (letter: 'A' | 'B', text: string) => {
  await user.click(chip(`Version ${letter}`))
  const field = screen.getByRole('textbox', { name: `Name of ${letter}` })
  await user.clear(field)
  await user.type(field, `${text}{Enter}`)
}

beforeEach(() => {
  app = showOnPage(
    <>
      <TheChain />
      <ListeningBar />
    </>,
  ).app
})
afterEach(cleanup)

describe('versions A and B', () => {
  it('are stored by a press on an empty chip, and compared and heard by a press on a stored one', async () => {
    await user.click(chip('A empty'))
    expect(app.chain.getState().snapshots.a?.chain).toBe(app.chain.getState().chain)
    expect(app.listen.getState().scope.kind).toBe('chain')
    expect(document.activeElement).toBe(chip('A'))
    await user.click(chip('A'))
    expect(chip('A').getAttribute('aria-pressed')).toBe('true')
    expect(app.listen.getState()).toMatchObject({ scope: { kind: 'snapshots', b: null }, side: 'bypassed' })
    expect(screen.getByRole('radio', { name: 'now' })).toBeDefined()
    app.chain.getState().edit(setSetting('level', 'ratio', 8))
    await user.click(chip('B empty'))
    await user.click(chip('B'))
    expect(app.listen.getState()).toMatchObject({ scope: { kind: 'snapshots', b: {} }, side: 'processed' })
    expect(screen.getByRole('radio', { name: 'A' })).toBeDefined()
    expect(screen.getByRole('radio', { name: 'B' })).toBeDefined()
  })

  it('are named, and called by their names wherever they are compared, as changes with words', async () => {
    await user.click(chip('A empty'))
    await name('A', 'boosts first')
    app.chain.getState().edit(setSetting('level', 'ratio', 8))
    await user.click(chip('B empty'))
    await name('B', 'boosts last')
    expect(document.activeElement).toBe(chip('Version B'))
    await user.click(chip('B boosts last'))
    for (const side of ['boosts first', 'boosts last'])
      expect(screen.getByRole('radio', { name: `\u2068${side}\u2069` })).toBeDefined()
    await choose('A', /^Go back to .boosts first/)
    await choose('B', /^Replace .boosts last/)
    await choose('A', /^Discard .boosts first/)
    expect(app.chain.getState().past.map(({ words }) => words)).toEqual([
      'stored as A',
      'named A \u2068boosts first\u2069',
      expect.stringContaining('ratio'),
      'stored as B',
      'named B \u2068boosts last\u2069',
      'back to \u2068boosts first\u2069',
      'replaced \u2068boosts last\u2069',
      'discarded \u2068boosts first\u2069',
    ])
    expect(chip('A empty')).toBeDefined()
    expect(chip('B boosts last')).toBeDefined()
  })
})
