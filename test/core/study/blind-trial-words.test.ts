import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { powerSentence, trialSentence } from '../../../src/core'

describe('trialSentence(result)', () => {
  it('says how often guessing does as well (binomial distribution: 0.0384)', () => {
    expect(trialSentence({ right: 12, rounds: 16 })).toMatch(
      /^Guessing alone does as well or better in 3\.8 of 100 such runs \(exact one-sided probability 0\.0384\)\. Guessing is an unlikely account/,
    )
  })

  it('says of a miss that it is no proof (binomial distribution: 0.1051; 0.370 missed at three in four)', () => {
    const sentence = trialSentence({ right: 11, rounds: 16 })
    expect(sentence).toMatch(/in 10\.5 of 100 such runs \(/)
    expect(sentence).toMatch(/no proof that there is no difference/)
    expect(sentence).toMatch(/three times in four is not told from guessing in 37\.0 of 100\.$/)
  })

  it('says the result nowhere: that stands above it', () => {
    expect(trialSentence({ right: 12, rounds: 16 })).not.toMatch(/12|16/)
    expect(trialSentence({ right: 4, rounds: 4 })).toMatch(/too short/)
  })

  it('never prints a probability as nothing (binomial distribution: 2^-20)', () => {
    expect(trialSentence({ right: 20, rounds: 20 })).toContain('probability below 0.0001')
  })

  it.each([
    [20, 20, /fewer than 1 of 1000 such runs/],
    [0, 16, /in 100 of 100 such runs/],
    [1, 16, /more than 999 of 1000 such runs/],
  ])('does not round %i of %i to never or always', (right, rounds, words) => {
    expect(trialSentence({ right, rounds })).toMatch(words)
  })

  it('never says what somebody can or cannot hear', () => {
    fc.assert(
      fc.property(
        fc
          .integer({ min: 8, max: 20 })
          .chain((n) => fc.tuple(fc.integer({ min: 0, max: n }), fc.constant(n))),
        ([right, rounds]) => {
          expect(trialSentence({ right, rounds })).not.toMatch(
            /\byou\b|\bcan(not|'t)?\b|\bproves?\b|inaudible/i,
          )
        },
      ),
    )
  })
})

describe('powerSentence(rounds)', () => {
  it('tells before a run what it takes and what it misses (binomial distribution: 0.0107; 0.756 missed)', () => {
    expect(powerSentence(10)).toMatch(/9 of 10 \(1\.1 of 100 runs\).*falls short of it in 75\.6 of 100\.$/)
  })

  it('says when a run is too short', () => {
    expect(powerSentence(4)).toMatch(/too short/)
  })
})
