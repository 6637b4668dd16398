import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { axisHeight, type LaneKind, laneHeights, roomFor } from '../../../../src/view/take/lanes/lane-heights'

const reducing = (count: number): LaneKind[] => Array.from({ length: count }, () => 'gainReduction')
const lanesWith = (stages: number, more: LaneKind[] = []): LaneKind[] => [
  'wave',
  ...more,
  ...reducing(stages),
  'loudness',
]
const someLanes = fc
  .tuple(fc.nat(32), fc.subarray<LaneKind>(['spectrogram', 'level']))
  .map(([stages, more]) => lanesWith(stages, more))
const GAP = 3

describe('the heights of the lanes', () => {
  it('fill what is there to the pixel, and no lane has less than its least', () => {
    fc.assert(
      fc.property(
        someLanes,
        fc.integer({ min: 100, max: 3000 }),
        fc.constantFrom(1, 1.25, 2),
        (lanes, available, scale) => {
          const heights = laneHeights(available, lanes, scale)
          const room = heights.reduce((sum, height) => sum + height + GAP * scale, axisHeight(scale))
          const least = Number.parseFloat(roomFor(lanes, scale)['--least-room'])
          expect(Math.abs(room - Math.max(available, least))).toBeLessThanOrEqual(2)
          expect(Math.min(...heights)).toBeGreaterThanOrEqual(24 * scale - 1)
          expect(Math.max(...heights)).toBe(heights[0])
        },
      ),
    )
  })

  // Heights of the lanes in the windows of the paper on the screen, less what else the take holds.
  it.each([
    [290, 100],
    [390, 170],
    [560, 260],
  ])('give the wave of the starting chain, in %d px, at least %d px', (available, leastWave) => {
    const [wave = 0, , compressor = 0, deEsser = 0, loudness = 0] = laneHeights(
      available,
      lanesWith(2, ['level']),
    )
    expect(wave).toBeGreaterThanOrEqual(leastWave)
    for (const height of [compressor, deEsser, loudness]) expect(height).toBeLessThanOrEqual(wave / 2)
  })

  it('keep 24 px for each of 32 stages that reduce, and ask for the room', () => {
    const lanes = lanesWith(32)
    expect(laneHeights(300, lanes)).toEqual([76, ...reducing(32).map(() => 24), 26])
    expect(Number.parseFloat(roomFor(lanes, 1)['--least-room'])).toBeGreaterThan(32 * 24)
  })

  it('take little of the room from the others for a lane that is opened', () => {
    const [closed, opened] = [laneHeights(400, lanesWith(2)), laneHeights(400, lanesWith(2, ['spectrogram']))]
    expect(opened[1]).toBeGreaterThanOrEqual(48)
    expect(opened[0]).toBeLessThan(closed[0] ?? 0)
    expect(opened[0]).toBeGreaterThan(opened[1] ?? 0)
  })
})
