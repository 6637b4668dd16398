import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import { startingChain } from '../../src/demo'
import { switchStage } from '../../src/session/chain/chain-edits'
import { createChainStore } from '../../src/session/chain/chain-store'
import { askBeforeLeaving } from '../../src/view/ask-before-leaving'

let chain: ReturnType<typeof createChainStore>
let end: () => void

/** Whether the page would ask before it goes. */
function asks(): boolean {
  return !window.dispatchEvent(new Event('beforeunload', { cancelable: true }))
}

beforeEach(() => {
  chain = createChainStore(startingChain())
  end = askBeforeLeaving({ chain })
})
afterEach(() => end())

describe('leaving the page', () => {
  it('is not asked about before anything is changed, nor once it is changed back', () => {
    expect(asks()).toBe(false)
    chain.getState().edit(switchStage('level', false))
    expect(asks()).toBe(true)
    chain.getState().edit(switchStage('level', true))
    expect(asks()).toBe(false)
  })

  it('is not asked about once the chain has gone into a file, until it is changed again', () => {
    chain.getState().edit(switchStage('level', false))
    chain.getState().setSafe(chain.getState().chain)
    expect(asks()).toBe(false)
    chain.getState().undo()
    expect(asks()).toBe(true)
  })

  it('is not asked about after the end of it', () => {
    chain.getState().edit(switchStage('level', false))
    end()
    expect(asks()).toBe(false)
  })
})
