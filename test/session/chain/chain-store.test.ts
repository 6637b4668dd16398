import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { chainOf, defaultStage } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import {
  addBand,
  addStage,
  type ChainEdit,
  duplicateStage,
  moveStage,
  removeBand,
  removeStage,
  resetStage,
  setBand,
  setSetting,
  switchStage,
} from '../../../src/session/chain/chain-edits'
import { createChainStore } from '../../../src/session/chain/chain-store'
import { SEED } from '../../setup/random-chains'

const threshold = (value: number): ChainEdit => setSetting('level', 'thresholdDb', value)
const ids = startingChain().stages.map(({ id }) => id)

/** Anything a hand might do, one thing after another, gestures among them. */
const hands = fc.array(
  fc.record({
    edit: fc.oneof(
      fc.tuple(fc.constantFrom(...ids), fc.boolean()).map(([id, on]) => switchStage(id, on)),
      fc.integer({ min: -30, max: -20 }).map(threshold),
      fc.constantFrom(...ids).map(resetStage),
      fc.constantFrom(...ids).map(removeStage),
      fc.constantFrom(...ids).map(duplicateStage),
      fc.constant(addStage('gain')),
      fc.tuple(fc.constantFrom(...ids), fc.nat(4)).map(([id, to]) => moveStage(id, to)),
    ),
    gesture: fc.constantFrom(undefined, undefined, 'a drag'),
  }),
  { maxLength: 30 },
)

describe('the chain and its changes', () => {
  it('goes back to where it began and forth to where it was, each step one that can be seen', () => {
    fc.assert(
      fc.property(hands, (done) => {
        const chain = createChainStore(startingChain())
        for (const { edit, gesture } of done) chain.getState().edit(edit, gesture)
        const { chain: last, past } = chain.getState()
        const seen = [JSON.stringify(last)]
        for (const _ of past) {
          chain.getState().undo()
          seen.push(JSON.stringify(chain.getState().chain))
        }
        expect(chain.getState().chain).toEqual(startingChain())
        for (let k = 1; k < seen.length; k++) expect(seen[k]).not.toBe(seen[k - 1])
        for (const _ of past) chain.getState().redo()
        expect(chain.getState().chain).toEqual(last)
      }),
      { seed: SEED },
    )
  })

  it('makes no change of a value that was set already, and keeps what can be redone', () => {
    const chain = createChainStore(startingChain())
    chain.getState().edit(threshold(-30))
    chain.getState().edit(threshold(-28))
    chain.getState().undo()
    const before = chain.getState()
    chain.getState().edit(threshold(-30))
    expect(chain.getState()).toEqual(before)
  })

  it('makes one change of a gesture, and none of one that came back to where it began', () => {
    const chain = createChainStore(startingChain())
    chain.getState().edit(threshold(-24))
    const wordsDone = () =>
      chain
        .getState()
        .past.slice(1)
        .map(({ words }) => words)
    chain.getState().edit(switchStage('level', false))
    for (const value of [-25, -26, -27]) chain.getState().edit(threshold(value), 'a drag')
    expect(wordsDone()).toEqual(['compressor off', 'threshold −24 to −27 dBFS'])
    chain.getState().edit(threshold(-24), 'a drag')
    expect(wordsDone()).toEqual(['compressor off'])
    chain.getState().edit(threshold(-25), 'a drag')
    expect(wordsDone()).toEqual(['compressor off', 'threshold −24 to −25 dBFS'])
  })

  it('keeps what can be redone, and the oldest change, through a gesture that comes back to where it began', () => {
    const chain = createChainStore(startingChain())
    const drag = (...values: number[]) => {
      for (const value of values) chain.getState().edit(threshold(value), 'a drag')
      chain.getState().endGesture()
    }
    // As many changes as are held, so that one more pushes the oldest out.
    const [even, odd] = [-30, -31].map((value) => threshold(value)(startingChain()))
    for (let k = 0; k <= 500; k++) chain.getState().edit(() => (k % 2 ? odd : even) ?? null)
    const full = chain.getState()
    drag(-25, -30)
    expect(chain.getState().past).toBe(full.past)
    chain.getState().undo()
    const undone = chain.getState()
    expect([undone.past.length, undone.future.length]).toEqual([499, 1])
    drag(-25, -26, -31, -27, -31)
    expect(chain.getState().future).toBe(undone.future)
    expect(chain.getState().past).toBe(undone.past)
    chain.getState().redo()
    expect(chain.getState().chain).toEqual(full.chain)
  })

  it('is as if nothing had happened after any gesture that comes back to where it began', () => {
    const moves = fc.array(fc.integer({ min: -60, max: -10 }), { minLength: 1, maxLength: 8 })
    fc.assert(
      fc.property(hands, fc.nat(5), moves, (done, undos, values) => {
        const chain = createChainStore(startingChain())
        for (const { edit, gesture } of done) chain.getState().edit(edit, gesture)
        chain.getState().edit(addStage('gain'))
        for (let k = 0; k < undos; k++) chain.getState().undo()
        chain.getState().endGesture()
        const before = chain.getState()
        const stage = before.chain.stages.find(({ kind }) => kind === 'compressor')
        if (stage?.kind !== 'compressor') return
        for (const value of [...values, stage.settings.thresholdDb])
          chain.getState().edit(setSetting(stage.id, 'thresholdDb', value), 'another drag')
        expect(chain.getState()).toEqual(before)
      }),
      { seed: SEED },
    )
  })

  it('says in words of which stage and band a change was, in few where there is but one of its kind', () => {
    const wordsOf = (...edits: ChainEdit[]) => {
      const chain = createChainStore(startingChain())
      for (const edit of edits) chain.getState().edit(edit)
      return chain.getState().past.at(-1)?.words
    }
    expect(wordsOf(setBand('lift', 0, { gainDb: 3 }))).toBe('2a, gain +6 to +3 dB')
    expect(wordsOf(setBand('lift', 0, { q: 1.7 }))).toMatch(/^2a, Q \d\.\d\d to 1\.70$/)
    expect(wordsOf(setBand('lift', 0, { frequencyHz: 980 }))).toMatch(/^2a, frequency [\d.]+ kHz to 980 Hz$/)
    expect(wordsOf(threshold(-30.5))).toBe('threshold −23 to −30.5 dBFS')
    expect(wordsOf(setBand('lift', 0, { on: false }))).toBe('2a off')
    expect(wordsOf(addBand('lift'))).toBe('add band 2c')
    expect(wordsOf(removeBand('clean-up', 0))).toBe('remove band 1a')
    expect(wordsOf(switchStage('clean-up', false))).toBe('1 Equaliser off')
    expect(wordsOf(switchStage('level', false))).toBe('compressor off')
    expect(wordsOf(setSetting('lift', 'design', 'bilinear'))).toBe(
      '2 Equaliser, design matched to analogue to bilinear',
    )
    expect(wordsOf(threshold(-30))).toBe('threshold −23 to −30 dBFS')
    expect(wordsOf(duplicateStage('level'))).toBe('duplicate compressor')
    expect(wordsOf(duplicateStage('level'), threshold(-30))).toBe('3 Compressor, threshold −23 to −30 dBFS')
    expect(wordsOf(moveStage('lift', 0))).toBe('2 Equaliser earlier')
    expect(wordsOf(resetStage('lift'))).toBe('reset 2 Equaliser')
    expect(wordsOf(removeStage('lift'))).toBe('remove 2 Equaliser')
    expect(wordsOf(addStage('equaliser'))).toBe('add equaliser')
    expect(
      wordsOf(setSetting('level', 'ratio', Number.POSITIVE_INFINITY), setSetting('level', 'ratio', 4)),
    ).toBe('ratio ∞:1 to 4:1')
  })

  it('has a stage at hand whatever goes: what was added, else the same, else its neighbour', () => {
    const chain = createChainStore(chainOf([defaultStage('gain', 'one'), defaultStage('gain', 'two')]))
    const atHand = () => chain.getState().selectedId
    chain.getState().edit(addStage('saturator'))
    expect(atHand()).toBe('saturator-1')
    chain.getState().edit(removeStage('saturator-1'))
    expect(atHand()).toBe('two')
    chain.getState().edit(removeStage('two'))
    chain.getState().edit(removeStage('one'))
    expect(atHand()).toBeNull()
  })
})
