import { describe, expect, it } from 'vitest'
import { matchedLine, matchedWords } from '../../../src/view/listening/matched-words'

describe('matchedWords', () => {
  it('says which side plays lower, by how much, and what that was measured from', () => {
    expect(matchedWords(true, { bypassedDb: 0, processedDb: -1.84, measuredOver: 'loop' })).toEqual({
      gain: '“with” plays 1.8 dB lower',
      basis: 'over the loop',
    })
    expect(matchedWords(true, { bypassedDb: -6.9, processedDb: 0, measuredOver: 'take' })).toEqual({
      gain: '“without” plays 6.9 dB lower',
      basis: 'over the take',
    })
  })

  it('does not print a gain of nothing', () => {
    const { gain } = matchedWords(true, { bypassedDb: -0.04, processedDb: 0, measuredOver: 'take' })
    expect(gain).toBe('already equally loud')
  })

  it('admits what it does not know', () => {
    expect(matchedWords(true, null).gain).toBe('not measured yet')
    const silent = matchedWords(true, { bypassedDb: 0, processedDb: 0, measuredOver: 'nothing' })
    expect(silent.basis).toBe('not measurable')
    expect(matchedWords(false, null).basis).toBe('off')
  })
})

describe('matchedLine', () => {
  it('says in one line whether both sides are brought to one loudness, and by what gain', () => {
    const gains = { bypassedDb: -6.9, processedDb: 0, measuredOver: 'take' } as const
    expect(matchedLine(true, matchedWords(true, gains))).toBe('matched: “without” plays 6.9 dB lower')
    expect(matchedLine(true, matchedWords(true, null))).toBe('matched: not measured yet')
    expect(matchedLine(false, matchedWords(false, gains))).toBe('not matched: each side at its own level')
  })
})
