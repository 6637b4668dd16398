import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  ChainError,
  chainOf,
  defaultStage,
  parseChain,
  stageDefinitions,
  stageKinds,
  withSettings,
} from '../../../src/core'

const refused = (check: () => unknown): boolean => {
  try {
    check()
    return false
  } catch (error) {
    if (error instanceof ChainError) return true
    throw error
  }
}

/** Values in range, out of range and of the wrong kind. */
const value = fc.oneof(
  fc.double({ min: -1e5, max: 1e5 }),
  fc.integer({ min: -100, max: 20_000 }),
  fc.constantFrom(
    Number.NaN,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    true,
    false,
    null,
    'peak',
    'rms',
    'all',
  ),
)

describe('withSettings', () => {
  it.each(stageKinds)('accepts and refuses the settings of a %s as parseChain does', (kind) => {
    const stage = defaultStage(kind, 'one')
    const keys = [...Object.keys(stage.settings), 'noSuchSetting']
    fc.assert(
      fc.property(fc.constantFrom(...keys), value, (key, changed) => {
        const settings = { ...stage.settings, [key]: changed }
        const document = { ...chainOf([]), stages: [{ ...stage, settings }] }
        expect(refused(() => withSettings(stage, settings, 'stages[0]'))).toBe(
          refused(() => parseChain(document)),
        )
      }),
      { numRuns: 300 },
    )
  })

  it('accepts and refuses bands of an equaliser as parseChain does', () => {
    const stage = defaultStage('equaliser', 'one')
    const [band] = stage.settings.bands
    if (!band) throw new RangeError('an equaliser starts with a band')
    const count = fc.integer({ min: 0, max: stageDefinitions.equaliser.parameters.bands.maxItems + 2 })
    fc.assert(
      fc.property(count, fc.constantFrom(...Object.keys(band)), value, (bandCount, key, changed) => {
        const bands = Array.from({ length: bandCount }, () => ({ ...band, [key]: changed }))
        const settings = { ...stage.settings, bands }
        const document = { ...chainOf([]), stages: [{ ...stage, settings }] }
        expect(refused(() => withSettings(stage, settings, 'stages[0]'))).toBe(
          refused(() => parseChain(document)),
        )
      }),
      { numRuns: 300 },
    )
  })

  it('names the setting', () => {
    const stage = defaultStage('compressor', 'one')
    expect(() => withSettings(stage, { ...stage.settings, ratio: Number.NaN }, 'stages[0]')).toThrow(
      /stages\[0\]\.settings\.ratio/,
    )
  })
})
