import { describe, expect, it } from 'vitest'
import { describeStage } from '../../../src/core'
import { band, equaliserWith, stageWith } from '../../setup/chains'

describe('what a stage does, in a sentence', () => {
  it.each([
    [{ thresholdDb: -19, ratio: 4, makeupDb: 5 }, 'Compresses 4:1 above −19 dBFS, +5 dB makeup'],
    [{ thresholdDb: -19.5, ratio: 2.5, makeupDb: 0 }, 'Compresses 2.5:1 above −19.5 dBFS'],
    [
      { thresholdDb: -19, ratio: Number.POSITIVE_INFINITY, makeupDb: -2 },
      'Limits above −19 dBFS, −2 dB makeup',
    ],
    [{ ratio: 1, makeupDb: 3 }, 'No compression: ratio 1:1, +3 dB makeup'],
    [{ mix: 0 }, 'Changes nothing: mix 0 %'],
  ])('compressor %o: %s', (settings, sentence) => {
    expect(describeStage(stageWith('compressor', settings))).toBe(sentence)
  })

  it.each([
    [{}, 'Reduces sibilance above 4.5 kHz, by up to 10 dB'],
    [{ band: 'all' as const }, 'Reduces everything during sibilance, by up to 10 dB'],
    [{ rangeDb: 0 }, 'Reduces nothing: range 0 dB'],
    [{ ratio: 1 }, 'Reduces nothing: ratio 1:1'],
  ])('de-esser %o: %s', (settings, sentence) => {
    const usual = { crossoverHz: 4500, thresholdDb: -30, rangeDb: 10 }
    expect(describeStage(stageWith('de-esser', { ...usual, ...settings }))).toBe(sentence)
  })

  it.each([
    [
      [
        { shape: 'high-pass' as const, frequencyHz: 170 },
        { frequencyHz: 300, gainDb: -3 },
      ],
      'Rolls off below 170 Hz, cuts 3 dB at 300 Hz',
    ],
    [[{ shape: 'high-shelf' as const, frequencyHz: 10_000, gainDb: 2.5 }], 'Boosts 2.5 dB above 10 kHz'],
    [[{ shape: 'low-pass' as const, frequencyHz: 12_000 }], 'Rolls off above 12 kHz'],
    [[{ gainDb: 0 }, { on: false, gainDb: 6 }], 'Changes nothing'],
  ])('equaliser %o: %s', (bands, sentence) => {
    expect(describeStage(equaliserWith(bands.map(band)))).toBe(sentence)
  })

  it.each([
    ['saturator' as const, { driveDb: 6 }, 'Saturates with 6 dB of drive'],
    ['gain' as const, { gainDb: -10 }, 'Lowers the level by 10 dB'],
  ])('%s %o: %s', (kind, settings, sentence) => {
    expect(describeStage(stageWith(kind, settings))).toBe(sentence)
  })

  it('of a stage that is off says what it would be for', () => {
    const off = { ...stageWith('compressor', {}), on: false }
    expect(describeStage(off)).toBe('Off: evens out the level by turning loud notes down')
  })
})
