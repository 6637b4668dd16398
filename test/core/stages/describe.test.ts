import { describe, expect, it } from 'vitest'
import { describeStage } from '../../../src/core'
import { stageWith } from '../../setup/chains'

describe('what a stage does, in a sentence', () => {
  it.each([
    [
      { thresholdDb: -19, ratio: 4, makeupDb: 5 },
      'Turns down what is above −19.0 dBFS, 4:1, then all up 5.0 dB',
    ],
    [{ thresholdDb: -19, ratio: 2.5, makeupDb: 0 }, 'Turns down what is above −19.0 dBFS, 2.5:1'],
    [
      { thresholdDb: -19, ratio: Number.POSITIVE_INFINITY, makeupDb: -2 },
      'Lets nothing past −19.0 dBFS, then all down 2.0 dB',
    ],
    [{ ratio: 1, makeupDb: 3 }, 'Turns nothing down: ratio 1:1, then all up 3.0 dB'],
    [{ mix: 0 }, 'Changes nothing: mix 0 %'],
  ])('compressor %o: %s', (settings, sentence) => {
    expect(describeStage(stageWith('compressor', settings))).toBe(sentence)
  })

  it.each([
    [{}, 'Turns S and T above 4.5 kHz down past −30.0 dBFS, by 10.0 dB at most'],
    [
      { band: 'all' as const },
      'Turns everything down where S and T above 4.5 kHz pass −30.0 dBFS, by 10.0 dB at most',
    ],
    [{ rangeDb: 0 }, 'Turns nothing down: range 0 dB'],
    [{ ratio: 1 }, 'Turns nothing down: ratio 1:1'],
  ])('de-esser %o: %s', (settings, sentence) => {
    const usual = { crossoverHz: 4500, thresholdDb: -30, rangeDb: 10 }
    expect(describeStage(stageWith('de-esser', { ...usual, ...settings }))).toBe(sentence)
  })
})
