import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reductionDb, type SettingsByKind, stageDefinitions } from '../../../../src/core'
import { levelMet } from '../../../../src/view/stage/pictures/sibilance-level'

const settings: SettingsByKind['de-esser'] = {
  crossoverHz: 4500,
  thresholdDb: -30,
  ratio: 20,
  kneeDb: 0,
  attackMs: 0.02,
  releaseMs: 20,
  rangeDb: 12,
  band: 'above',
}

describe('the level that a de-esser met', () => {
  it('is the one at which its static curve asks for the gain reduction', () => {
    const { ratio, kneeDb } = stageDefinitions['de-esser'].parameters
    fc.assert(
      fc.property(
        fc.double({ min: -60, max: -10, noNaN: true }),
        fc.double({ min: 1.5, max: ratio.type === 'number' ? ratio.max : 1.5, noNaN: true }),
        fc.double({ min: 0, max: kneeDb.type === 'number' ? kneeDb.max : 0, noNaN: true }),
        fc.double({ min: 0.2, max: 11.9, noNaN: true }),
        (thresholdDb, ratio, kneeDb, reducedDb) => {
          const met = levelMet({ ...settings, thresholdDb, ratio, kneeDb }, reducedDb)
          expect(reductionDb(met?.levelDbfs ?? Number.NaN, { thresholdDb, ratio, kneeDb })).toBeCloseTo(
            reducedDb,
            6,
          )
          expect(met?.orMore).toBe(false)
        },
      ),
    )
  })

  it('may have been higher where all of the range was used', () => {
    // 12 dB = (1 - 1/20) of what is above the threshold.
    expect(levelMet(settings, 12)).toEqual({ levelDbfs: expect.closeTo(-30 + 12 / 0.95, 6), orMore: true })
  })

  it('is none where nothing was reduced, or ever is', () => {
    expect(levelMet(settings, 0)).toBeNull()
    expect(levelMet({ ...settings, ratio: 1 }, 3)).toBeNull()
    expect(levelMet({ ...settings, rangeDb: 0 }, 3)).toBeNull()
  })
})
