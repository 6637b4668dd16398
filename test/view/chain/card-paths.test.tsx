import { describe, expect, it } from 'vitest'
import { defaultStage } from '../../../src/core'
import {
  frequencyX,
  gainY,
  HEIGHT,
  responsePath,
  staticCurvePath,
  transferPath,
  WIDTH,
} from '../../../src/view/chain/figures/card-paths'

const pointsOf = (path: string) =>
  path
    .slice(1)
    .split('L')
    .map((point) => point.split(',').map(Number))

describe('the small pictures on the cards', () => {
  it('reach from 20 Hz to 20 kHz, with no gain in the middle', () => {
    expect([frequencyX(20), frequencyX(20_000)]).toEqual([0, WIDTH])
    expect(gainY(0)).toBe(HEIGHT / 2)
    expect(gainY(6)).toBeLessThan(gainY(0))
  })

  it('show a boost where it is, and all of one that is larger than usual', () => {
    const bell = defaultStage('equaliser')
    const [band] = bell.settings.bands
    if (!band) throw new Error('a new equaliser has a band')
    const path = (gainDb: number) =>
      responsePath({ ...bell, settings: { ...bell.settings, bands: [{ ...band, gainDb }] } }, 48_000)
    const highest = pointsOf(path(20)).reduce((a, b) => ((a[1] ?? 0) < (b[1] ?? 0) ? a : b))
    expect(highest[0]).toBeCloseTo(frequencyX(band.frequencyHz), -1)
    expect(highest[1]).toBeGreaterThanOrEqual(0)
    expect(pointsOf(path(0)).every(([, y]) => y === HEIGHT / 2)).toBe(true)
  })

  it('stay within a low sample rate', () => {
    expect(pointsOf(responsePath(defaultStage('equaliser'), 8000)).at(-1)?.[0]).toBeCloseTo(
      frequencyX(3920),
      0,
    )
  })

  it('bend a static curve at its threshold and a waveshaper where it bends', () => {
    const curve = pointsOf(staticCurvePath({ thresholdDb: -30, ratio: 4, kneeDb: 0 }))
    expect(curve[0]).toEqual([0, HEIGHT - 2])
    // From -30 dBFS on 1 dB in 4: at 0 dBFS 37.5 of 60 dB, of 38 units from 40 up, with one decimal.
    expect(curve.at(-1)?.[1]).toBe(16.3)
    expect(pointsOf(transferPath(() => 1)).every(([, y]) => y === 2)).toBe(true)
  })
})
