import { beforeEach, describe, expect, it } from 'vitest'
import type { Scope } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import {
  addBand,
  addStage,
  moveStage,
  removeBand,
  removeStage,
  resetStage,
  setBand,
} from '../../../src/session/chain/chain-edits'
import { createChainStore } from '../../../src/session/chain/chain-store'
import { Comparing } from '../../../src/session/comparison/comparing'
import { createListenStore } from '../../../src/session/listening/listen-store'

let chain: ReturnType<typeof createChainStore>
let listen: ReturnType<typeof createListenStore>
const band = (bandIndex: number): Scope => ({ kind: 'band', stageId: 'clean-up', bandIndex })
const compared = () => listen.getState().scope

beforeEach(() => {
  chain = createChainStore(startingChain())
  listen = createListenStore()
  new Comparing({ chain, listen })
  chain.getState().edit(addBand('clean-up', { frequencyHz: 5000, gainDb: 2 }))
  listen.setState({ scope: band(1) })
})

describe('the band that is compared', () => {
  it('gives way to its stage when it is removed, not to the band that moves into its place', () => {
    chain.getState().edit(removeBand('clean-up', 1))
    expect(compared()).toEqual({ kind: 'stage', stageId: 'clean-up' })
  })

  it('stays compared while others come and go', () => {
    chain.getState().edit(removeBand('clean-up', 2))
    expect(compared()).toEqual(band(1))
    chain.getState().edit(removeBand('clean-up', 0))
    expect(compared()).toEqual(band(0))
    chain.getState().undo()
    expect(compared()).toEqual(band(1))
    chain.getState().edit(addBand('clean-up'))
    expect(compared()).toEqual(band(1))
  })

  it('gives way when its coming is undone', () => {
    listen.setState({ scope: band(2) })
    chain.getState().undo()
    expect(compared()).toEqual({ kind: 'stage', stageId: 'clean-up' })
  })

  it('stays compared when it is set, or its stage moved; other stages have no say', () => {
    const scope = compared()
    chain.getState().edit(setBand('clean-up', 1, { gainDb: -9 }))
    chain.getState().edit(moveStage('clean-up', 2))
    chain.getState().edit(removeBand('lift', 0))
    chain.getState().edit(removeStage('level'))
    expect(compared()).toBe(scope)
    chain.getState().edit(resetStage('clean-up'))
    expect(compared()).toEqual({ kind: 'stage', stageId: 'clean-up' })
  })
})

describe('the stage that is compared', () => {
  it('is the selected one, whichever is selected, added or removed', () => {
    chain.getState().select('lift')
    expect(compared()).toEqual({ kind: 'stage', stageId: 'lift' })
    chain.getState().edit(addStage('gain'))
    expect(compared()).toEqual({ kind: 'stage', stageId: 'gain-1' })
    chain.getState().edit(removeStage('gain-1'))
    expect(compared()).toEqual({ kind: 'stage', stageId: chain.getState().selectedId })
  })

  it('is the whole chain once there is no stage', () => {
    for (const { id } of startingChain().stages) chain.getState().edit(removeStage(id))
    expect(compared()).toEqual({ kind: 'chain' })
  })
})
