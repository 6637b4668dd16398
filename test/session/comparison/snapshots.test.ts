import { describe, expect, it } from 'vitest'
import { chainOf, comparisonOf, defaultStage } from '../../../src/core'
import { addStage } from '../../../src/session/chain/chain-edits'
import { createChainStore } from '../../../src/session/chain/chain-store'
import {
  createKeptStore,
  KeptVersions,
  sideWords,
  stagesOfWords,
} from '../../../src/session/comparison/snapshots'
import { createListenStore } from '../../../src/session/listening/listen-store'

function keeping() {
  const chain = createChainStore(chainOf([defaultStage('gain')]))
  const listen = createListenStore()
  const kept = createKeptStore()
  return { chain, listen, kept, versions: new KeptVersions({ chain, listen, kept }) }
}

describe('KeptVersions', () => {
  it('compares nothing before anything is kept', () => {
    const { listen, versions } = keeping()
    versions.compare()
    expect(listen.getState().scope).toEqual({ kind: 'chain' })
  })

  it('compares kept A with the chain as it is now, whatever becomes of that', () => {
    const { chain, listen, versions } = keeping()
    const first = chain.getState().chain
    versions.keep('a')
    versions.compare()
    chain.getState().edit(addStage('saturator'))
    const { scope } = listen.getState()
    expect(sideWords(scope)).toEqual({ bypassed: 'kept A', processed: 'now' })
    const now = chain.getState().chain
    expect(comparisonOf(now, scope)).toEqual({ bypassed: first, processed: now })
  })

  it('compares kept A with kept B, and follows what is kept anew', () => {
    const { chain, listen, versions } = keeping()
    versions.keep('a')
    chain.getState().edit(addStage('compressor'))
    versions.keep('b')
    versions.compare()
    chain.getState().edit(addStage('saturator'))
    versions.keep('b')
    const { scope } = listen.getState()
    expect(sideWords(scope)).toEqual({ bypassed: 'kept A', processed: 'kept B' })
    const { bypassed, processed: other } = comparisonOf(chain.getState().chain, scope)
    expect([bypassed.stages.length, other.stages.length]).toEqual([1, 3])
  })

  it('says where lanes and figures of stages are those of kept B, and not of the chain on the bench', () => {
    const { chain, listen, versions } = keeping()
    const words = () => stagesOfWords(listen.getState().scope, chain.getState().chain)
    expect(words()).toBeNull()
    versions.keep('a')
    versions.compare()
    chain.getState().edit(addStage('compressor'))
    expect(words()).toBeNull()
    versions.keep('b')
    expect(words()).toBeNull()
    chain.getState().edit(addStage('saturator'))
    expect(words()).toBe('Lanes and figures of stages are those of kept B, not of the chain on the bench.')
    chain.getState().undo()
    expect(words()).toBeNull()
  })

  it('brings a kept version back as one change that can be undone', () => {
    const { chain, versions } = keeping()
    const first = chain.getState().chain
    versions.keep('a')
    chain.getState().edit(addStage('compressor'))
    const second = chain.getState().chain
    versions.bringBack('a')
    expect(chain.getState().chain).toEqual(first)
    expect(chain.getState().past.at(-1)?.words).toBe('back to kept A')
    chain.getState().undo()
    expect(chain.getState().chain).toEqual(second)
  })
})
