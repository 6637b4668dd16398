import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { reductionDb } from '../../../src/core'
import { levelOfReduction, staticCurvePoints } from '../../../src/view/plot/static-curve'

const curves = fc.record({
  thresholdDb: fc.double({ min: -80, max: 0, noNaN: true }),
  ratio: fc.oneof(fc.double({ min: 1.1, max: 100, noNaN: true }), fc.constant(Number.POSITIVE_INFINITY)),
  kneeDb: fc.double({ min: 0, max: 36, noNaN: true }),
})

describe('the static curve', () => {
  it('rises, and never above what came in', () => {
    fc.assert(
      fc.property(curves, (curve) => {
        const points = staticCurvePoints(curve)
        points.forEach(([inDb, outDb], i) => {
          expect(outDb).toBeLessThanOrEqual(inDb)
          const before = points[i - 1]
          if (before) expect(outDb).toBeGreaterThanOrEqual(before[1] - 1e-9)
        })
      }),
    )
  })

  it('has a point at its corner, where a sharp one would be cut off', () => {
    const points = staticCurvePoints({ thresholdDb: -20.5, ratio: 4, kneeDb: 0 })
    expect(points).toContainEqual([-20.5, -20.5])
  })
})

describe('the level of a reduction', () => {
  it('is the one at which the curve asks for it', () => {
    fc.assert(
      fc.property(curves, fc.double({ min: 0.01, max: 3, noNaN: true }), (curve, reduction) => {
        const level = levelOfReduction(curve, reduction)
        expect(level).not.toBeNull()
        expect(reductionDb(level ?? Number.NaN, curve)).toBeCloseTo(reduction, 6)
      }),
    )
  })

  it('is none where nothing is held, or nothing ever would be', () => {
    expect(levelOfReduction({ thresholdDb: -20, ratio: 4, kneeDb: 6 }, 0)).toBeNull()
    expect(levelOfReduction({ thresholdDb: -20, ratio: 1, kneeDb: 6 }, 3)).toBeNull()
  })
})
