import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { powerSentence, trialSentence } from '../../../src/core'

describe('trialSentence(result)', () => {
  it('says how often guessing does as well (binomial distribution: 0.0384)', () => {
    expect(trialSentence({ right: 12, rounds: 16 })).toMatch(
      /^Guessing alone does as well or better 4 % of the time \(exact one-sided test\)\. Guessing is an unlikely explanation/,
    )
  })

  it('says of a miss that it is no proof (binomial distribution: 0.1051; 0.370 missed at three in four)', () => {
    const sentence = trialSentence({ right: 11, rounds: 16 })
    expect(sentence).toMatch(/as well or better 11 % of the time \(/)
    expect(sentence).toMatch(/no proof that there is no difference/)
    expect(sentence).toMatch(/three times in four looks like one who guesses 37 % of the time\.$/)
  })

  it('says the result nowhere: that stands above it', () => {
    expect(trialSentence({ right: 12, rounds: 16 })).not.toMatch(/12|16/)
    expect(trialSentence({ right: 4, rounds: 4 })).toMatch(/too short/)
  })

  it('never prints a probability as nothing (binomial distribution: 2^-20)', () => {
    expect(trialSentence({ right: 20, rounds: 20 })).toContain('or better less than 0.1 % of the time')
  })

  it.each([
    [20, 20, /less than 0\.1 % of the time/],
    [0, 16, /better 100 % of the time/],
    [1, 16, /more than 99\.9 % of the time/],
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
    expect(powerSentence(10)).toMatch(
      /^9 of 10 or better happens by guessing 1 % of the time;.*falls short of it 76 % of the time\.$/,
    )
  })

  it('says when a run is too short', () => {
    expect(powerSentence(4)).toMatch(/too short/)
  })
})
