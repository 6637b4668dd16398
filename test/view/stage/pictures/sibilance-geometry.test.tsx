import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { ranked, sibilanceScale } from '../../../../src/view/stage/pictures/sibilance-geometry'

const level = fc.double({ min: -100, max: 6, noNaN: true })
const sibilants = fc.array(
  fc.record({
    startSeconds: fc.constant(0),
    endSeconds: fc.constant(1),
    levelDbfs: level,
    vowelDbfs: fc.option(level),
  }),
  { maxLength: 400 },
)

describe('sibilants in a picture', () => {
  it('go from the loudest down, and of very many there is an even choice', () => {
    fc.assert(
      fc.property(sibilants, (all) => {
        const shown = ranked(all)
        expect(shown.length).toBe(Math.min(all.length, 150))
        expect(shown[0]?.levelDbfs).toBe(
          all.length === 0 ? undefined : Math.max(...all.map((s) => s.levelDbfs)),
        )
        shown.slice(1).forEach((each, k) => {
          expect(each.levelDbfs).toBeLessThanOrEqual(shown[k]?.levelDbfs ?? 0)
        })
      }),
    )
  })

  it('stand within the scale, as does the threshold', () => {
    fc.assert(
      fc.property(sibilants, fc.double({ min: -80, max: 0, noNaN: true }), (all, thresholdDb) => {
        const { low, high } = sibilanceScale(all, thresholdDb)
        for (const db of [thresholdDb, ...all.map(({ levelDbfs }) => levelDbfs)]) {
          expect(db).toBeGreaterThan(low)
          expect(db).toBeLessThan(high)
        }
      }),
    )
  })
})
