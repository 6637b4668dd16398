import { describe, expect, it } from 'vitest'
import { matchedWords } from '../../../src/view/listening/matched-words'

describe('matchedWords', () => {
  it('say which side plays lower, by how much, and what that was measured from', () => {
    expect(matchedWords(true, { bypassedDb: 0, processedDb: -1.84, measuredOver: 'loop' })).toEqual({
      side: 'with',
      amount: '−1.8 dB',
      sentence: '“with” plays 1.8 dB lower, measured over the loop.',
    })
    expect(matchedWords(true, { bypassedDb: -6.9, processedDb: 0, measuredOver: 'take' })).toEqual({
      side: 'without',
      amount: '−6.9 dB',
      sentence: '“without” plays 6.9 dB lower, measured over the take.',
    })
  })

  it('do not print a gain of nothing', () => {
    const { side, amount } = matchedWords(true, { bypassedDb: -0.04, processedDb: 0, measuredOver: 'take' })
    expect([side, amount]).toEqual([null, '0 dB'])
  })

  it('admit what is not known', () => {
    expect(matchedWords(true, null).amount).toBe('…')
    const silent = matchedWords(true, { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' })
    expect(silent.amount).toBe('not measurable')
    expect(matchedWords(false, null).amount).toBe('off')
  })
})
