import { describe, expect, it } from 'vitest'
import { comparisonOf } from '../../../src/core'
import { startingChain } from '../../../src/demo'
import { switchStage } from '../../../src/session/chain/chain-edits'
import { comparedWords } from '../../../src/session/comparison/compared-words'
import { refusalWords, trialRefusal } from '../../../src/session/trials/trial-refusal'
import { evidenceOf, take } from './trial-app'

const chain = startingChain()
const whole = comparisonOf(chain, { kind: 'chain' })
const measured = { evidence: evidenceOf(whole), working: null, problem: null }

describe('trialRefusal', () => {
  it('has nothing against a comparison that is measured and matched', () => {
    expect(trialRefusal({ take }, measured, whole)).toBeNull()
  })

  it('wants a take', () => {
    expect(trialRefusal({ take: null }, measured, whole)).toBe('no-take')
  })

  it('wants sides that can be matched', () => {
    const nothing = { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' } as const
    const evidence = { ...evidenceOf(whole), matching: nothing }
    expect(trialRefusal({ take }, { ...measured, evidence }, whole)).toBe('not-measurable')
    expect(refusalWords['not-measurable']).toMatch(/cannot be matched.*too little sound/)
  })

  it('wants two sides that differ', () => {
    const off = switchStage('level', false)(chain)?.chain ?? chain
    const comparison = comparisonOf(off, { kind: 'stage', stageId: 'level' })
    expect(trialRefusal({ take }, measured, comparison)).toBe('same-sides')
  })

  it('waits for figures, and for the figures of this very comparison', () => {
    expect(trialRefusal({ take }, { ...measured, working: 0.5 }, whole)).toBe('measuring')
    expect(trialRefusal({ take }, { ...measured, evidence: null }, whole)).toBe('measuring')
    const stage = comparisonOf(chain, { kind: 'stage', stageId: 'level' })
    expect(trialRefusal({ take }, measured, stage)).toBe('measuring')
    expect(trialRefusal({ take }, { ...measured, problem: 'No figures.' }, whole)).toBe('no-figures')
  })
})

describe('comparedWords', () => {
  it.each([
    [{ kind: 'chain' }, null, 'the whole chain'],
    [{ kind: 'stage', stageId: 'level' }, null, '3 Compressor'],
    [{ kind: 'band', stageId: 'clean-up', bandIndex: 1 }, null, '1 Equaliser, band b'],
    [{ kind: 'chain' }, 'level', 'the whole chain, heard after 3 Compressor'],
    [{ kind: 'stage', stageId: 'gone' }, 'gone', 'a stage that is gone'],
  ] as const)('%j, ear %s: %s', (scope, listeningPoint, words) => {
    expect(comparedWords(chain, scope, listeningPoint)).toBe(words)
  })
})
