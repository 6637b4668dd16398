import fc from 'fast-check'
import { beforeEach, describe, expect, it } from 'vitest'
import { chainOf, comparisonOf, defaultStage } from '../../../src/core'
import { addStage, removeStage, setSetting } from '../../../src/session/chain/chain-edits'
import { createChainStore, wouldBeLost } from '../../../src/session/chain/chain-store'
import { nameSnapshot } from '../../../src/session/chain/name-snapshot'
import {
  discardSnapshot,
  restoreSnapshot,
  snapshotKeys,
  storeSnapshot,
  type VersionsEdit,
} from '../../../src/session/chain/snapshots'
import { Comparing } from '../../../src/session/comparison/comparing'
import { sideWords, stagesOfWords } from '../../../src/session/comparison/side-words'
import { createListenStore } from '../../../src/session/listening/listen-store'
import { SEED } from '../../setup/random-chains'

let chain: ReturnType<typeof createChainStore>
let listen: ReturnType<typeof createListenStore>
let comparing: Comparing

const versions = (edit: VersionsEdit) => chain.getState().editVersions(edit)
const lastWords = () => chain.getState().past.at(-1)?.words
const scope = () => listen.getState().scope

beforeEach(() => {
  chain = createChainStore(chainOf([defaultStage('gain')]))
  listen = createListenStore()
  comparing = new Comparing({ chain, listen })
})

describe('a stored version', () => {
  it('is stored, replaced, restored and discarded as changes with words, each of which is undone', () => {
    const first = chain.getState().chain
    versions(storeSnapshot('a'))
    expect(lastWords()).toBe('stored as A')
    // Nothing that follows the chain has anything to do.
    expect(chain.getState().chain).toBe(first)
    chain.getState().edit(addStage('compressor'))
    const second = chain.getState().chain
    versions(storeSnapshot('a'))
    expect(lastWords()).toBe('replaced A')
    expect(chain.getState().snapshots.a).toEqual({ name: '', chain: second })
    chain.getState().undo()
    expect(chain.getState().snapshots.a?.chain).toBe(first)
    versions(restoreSnapshot('a'))
    expect([lastWords(), chain.getState().chain]).toEqual(['back to A', first])
    chain.getState().undo()
    expect(chain.getState().chain).toEqual(second)
    versions(discardSnapshot('a'))
    expect([lastWords(), chain.getState().snapshots.a]).toEqual(['discarded A', null])
    chain.getState().undo()
    expect(chain.getState().snapshots.a?.chain).toBe(first)
    chain.getState().redo()
    expect(chain.getState().snapshots.a).toBeNull()
  })

  it('is no change where nothing is different, or nothing is stored', () => {
    versions(restoreSnapshot('b'))
    versions(discardSnapshot('b'))
    versions(storeSnapshot('b'))
    versions(storeSnapshot('b'))
    versions(restoreSnapshot('b'))
    expect(chain.getState().past.map(({ words }) => words)).toEqual(['stored as B'])
  })

  it('is given a name, which is undone, stays when the version is replaced, and is used in words', () => {
    versions(nameSnapshot('a', 'boosts first'))
    expect(lastWords()).toBeUndefined()
    versions(storeSnapshot('a'))
    const stored = chain.getState().snapshots.a
    versions(nameSnapshot('a', '  boosts\n first '))
    expect(lastWords()).toBe('named A \u2068boosts first\u2069')
    expect(chain.getState().snapshots.a).toEqual({ name: 'boosts first', chain: stored?.chain })
    versions(nameSnapshot('a', 'boosts first'))
    expect(chain.getState().past).toHaveLength(2)
    chain.getState().undo()
    expect(chain.getState().snapshots.a?.name).toBe('')
    chain.getState().redo()
    chain.getState().edit(addStage('compressor'))
    versions(storeSnapshot('a'))
    expect(lastWords()).toBe('replaced \u2068boosts first\u2069')
    expect(chain.getState().snapshots.a).toEqual({ name: 'boosts first', chain: chain.getState().chain })
    versions(nameSnapshot('a', ' '))
    expect(lastWords()).toBe('took the name off A')
    expect(wouldBeLost(chain.getState())).toBe(true)
  })

  it('has a name of 40 characters at most, none cut in half, without marks that turn text around', () => {
    versions(storeSnapshot('b'))
    const nameAfter = (typed: string) => {
      versions(nameSnapshot('b', typed))
      return chain.getState().snapshots.b?.name
    }
    expect(nameAfter('x'.repeat(60))).toBe('x'.repeat(40))
    expect(nameAfter(`${'x'.repeat(39)}🎤`)).toBe('x'.repeat(39))
    expect(nameAfter('loud \u202Ednoces\u202C')).toBe('loud dnoces')
  })

  it('would be lost with the page, and what was undone would not', () => {
    expect(wouldBeLost(chain.getState())).toBe(false)
    versions(storeSnapshot('a'))
    expect(wouldBeLost(chain.getState())).toBe(true)
    chain.getState().setSafe(chain.getState().chain)
    expect(wouldBeLost(chain.getState())).toBe(true)
    chain.getState().undo()
    expect(wouldBeLost(chain.getState())).toBe(false)
  })

  it('leaves an open gesture: what is dragged on is another change', () => {
    chain.getState().edit(setSetting('gain', 'gainDb', 1), 'a drag')
    versions(storeSnapshot('a'))
    chain.getState().edit(setSetting('gain', 'gainDb', 2), 'a drag')
    expect(chain.getState().past).toHaveLength(3)
  })
})

it('undo goes back to where it began and redo to where it was, over edits and stored versions mixed', () => {
  const name = fc.constantFrom(...snapshotKeys)
  const moves = fc.array(
    fc.oneof(
      fc
        .integer({ min: -3, max: 3 })
        .map((gainDb) => () => chain.getState().edit(setSetting('gain', 'gainDb', gainDb))),
      fc.constant(() => chain.getState().edit(addStage('gain'))),
      fc.constant(() => chain.getState().edit(removeStage('gain-1'))),
      name.map((one) => () => versions(storeSnapshot(one))),
      name.map((one) => () => versions(restoreSnapshot(one))),
      name.map((one) => () => versions(discardSnapshot(one))),
      name.map((one) => () => versions(nameSnapshot(one, 'loud'))),
    ),
    { maxLength: 20 },
  )
  const now = () => JSON.stringify([chain.getState().chain, chain.getState().snapshots])
  fc.assert(
    fc.property(moves, (done) => {
      chain = createChainStore(chainOf([defaultStage('gain')]))
      const seen = [now()]
      for (const move of done) {
        move()
        if (now() !== seen.at(-1)) seen.push(now())
      }
      expect(chain.getState().past).toHaveLength(seen.length - 1)
      for (const before of seen.slice(0, -1).reverse()) {
        chain.getState().undo()
        expect(now()).toBe(before)
      }
      for (const after of seen.slice(1)) {
        chain.getState().redo()
        expect(now()).toBe(after)
      }
    }),
    { seed: SEED },
  )
})

describe('comparing stored versions', () => {
  it('compares the whole chain before anything is stored', () => {
    comparing.compare('snapshots')
    expect(scope()).toEqual({ kind: 'chain' })
  })

  it('compares A with the chain as it is now, whatever becomes of that', () => {
    const first = chain.getState().chain
    versions(storeSnapshot('a'))
    comparing.compare('snapshots')
    chain.getState().edit(addStage('saturator'))
    expect(sideWords(scope())).toEqual({ bypassed: 'A', processed: 'now' })
    const now = chain.getState().chain
    expect(comparisonOf(now, scope())).toEqual({ bypassed: first, processed: now })
  })

  it('follows what is stored, undone and discarded', () => {
    versions(storeSnapshot('a'))
    comparing.compare('snapshots')
    chain.getState().edit(addStage('compressor'))
    versions(storeSnapshot('b'))
    expect(sideWords(scope())).toEqual({ bypassed: 'A', processed: 'B' })
    const { bypassed, processed } = comparisonOf(chain.getState().chain, scope())
    expect([bypassed.stages.length, processed.stages.length]).toEqual([1, 2])
    chain.getState().undo()
    expect(sideWords(scope())).toEqual({ bypassed: 'A', processed: 'now' })
    versions(discardSnapshot('a'))
    expect(scope()).toEqual({ kind: 'chain' })
  })

  it('calls versions by their names, set apart for any direction of writing, and tells equal ones apart', () => {
    versions(storeSnapshot('a'))
    chain.getState().edit(addStage('compressor'))
    versions(storeSnapshot('b'))
    comparing.compare('snapshots')
    versions(nameSnapshot('a', 'boosts first'))
    expect(sideWords(scope())).toEqual({ bypassed: '\u2068boosts first\u2069', processed: 'B' })
    versions(nameSnapshot('b', 'boosts first'))
    const letters = { bypassed: 'A \u2068boosts first\u2069', processed: 'B \u2068boosts first\u2069' }
    expect(sideWords(scope())).toEqual(letters)
    versions(nameSnapshot('a', 'now'))
    versions(discardSnapshot('b'))
    expect(sideWords(scope())).toEqual({ bypassed: 'A \u2068now\u2069', processed: 'now' })
    versions(nameSnapshot('a', ''))
    versions(storeSnapshot('b'))
    versions(nameSnapshot('b', 'A'))
    expect(sideWords(scope())).toEqual({ bypassed: 'A', processed: 'B \u2068A\u2069' })
  })

  it('says where lanes and figures of stages are those of B, and not of the current chain', () => {
    const words = () => stagesOfWords(scope(), chain.getState().chain)
    versions(storeSnapshot('a'))
    comparing.compare('snapshots')
    chain.getState().edit(addStage('compressor'))
    expect(words()).toBeNull()
    versions(storeSnapshot('b'))
    expect(words()).toBeNull()
    chain.getState().edit(addStage('saturator'))
    expect(words()).toBe('Lanes and figures of stages are those of B, not of the current chain.')
    chain.getState().undo()
    expect(words()).toBeNull()
  })
})
