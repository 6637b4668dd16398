import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { bandsOf, withSameParts } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { moveStage, removeStage, setBand, setSetting } from '../../../src/session/chain/chain-edits'
import { createChainStore } from '../../../src/session/chain/chain-store'
import { chains, SEED } from '../../setup/random-chains'

/** Stages of the chain by id, as they are now. */
function stagesOf(store: ReturnType<typeof createChainStore>) {
  return new Map(store.getState().chain.stages.map((stage) => [stage.id, stage]))
}

function bandsIn(store: ReturnType<typeof createChainStore>, id: string) {
  const stage = stagesOf(store).get(id)
  return (stage && bandsOf(stage)) ?? []
}

describe('a chain that was edited', () => {
  it('keeps stages and bands that did not change, all along a drag', () => {
    const store = createChainStore(startingChain())
    const [before, bands] = [stagesOf(store), bandsIn(store, 'lift')]
    for (const frequencyHz of [2000, 2100])
      store.getState().edit(setBand('lift', 0, { frequencyHz }), 'a drag')
    for (const id of ['clean-up', 'level', 'sibilance']) expect(stagesOf(store).get(id)).toBe(before.get(id))
    expect(stagesOf(store).get('lift')).not.toBe(before.get('lift'))
    expect(bandsIn(store, 'lift')[0]).toMatchObject({ frequencyHz: 2100 })
    expect(bandsIn(store, 'lift')[1]).toBe(bands[1])
  })

  it('keeps them when others move or go', () => {
    const store = createChainStore(startingChain())
    const before = stagesOf(store)
    store.getState().edit(moveStage('level', 0))
    store.getState().edit(removeStage('clean-up'))
    store.getState().edit(setSetting('level', 'ratio', 8))
    for (const id of ['lift', 'sibilance']) expect(stagesOf(store).get(id)).toBe(before.get(id))
  })

  it('is what it was edited to', () => {
    fc.assert(
      fc.property(chains(), chains(), (now, before) => {
        expect(withSameParts(now, before)).toEqual(now)
      }),
      { seed: SEED },
    )
  })
})
