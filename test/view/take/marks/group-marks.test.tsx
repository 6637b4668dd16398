import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { groupWords, markGroups } from '../../../../src/view/take/marks/group-marks'
import { type Mark, marksOf } from '../../../../src/view/take/marks/take-marks'

const RATE = 8000
const FRAMES = 80_000
const sound = { sampleRate: RATE, channels: [new Float32Array(FRAMES)] }
const whole = { from: 0, to: FRAMES }

const marks = fc
  .array(
    fc.record({
      kind: fc.constantFrom('sibilant', 'clipped'),
      frame: fc.integer({ min: 0, max: FRAMES - 1 }),
    }),
    { maxLength: 60 },
  )
  .map((all): Mark[] => all.sort((a, b) => a.frame - b.frame))

describe('the marks of a take', () => {
  it('are its sibilants, its clipped samples and the ends of the loop, in order', () => {
    const sibilants = [{ startSeconds: 2.5, endSeconds: 2.6, levelDb: -9 }]
    const take = { sound, marks: { sibilants, clipped: [{ from: 800, to: 810 }] } }
    expect(marksOf(take, { from: 16_000, to: 24_000 })).toEqual([
      { kind: 'clipped', frame: 800 },
      { kind: 'loop-start', frame: 16_000 },
      { kind: 'sibilant', frame: 20_000 },
      { kind: 'loop-end', frame: 24_000 },
    ])
    expect(marksOf({ sound }, null)).toEqual([])
  })
})

describe('groups of marks', () => {
  it('hold every mark that is seen, and stand as far apart as they have to', () => {
    fc.assert(
      fc.property(marks, fc.double({ min: 0, max: 8, noNaN: true }), (all, zoom) => {
        const view = { from: 0, to: FRAMES / 2 ** zoom }
        const groups = markGroups(all, view, 1000, 24)
        const seen = all.filter(({ frame }) => frame <= view.to)
        const counted = groups.flatMap(({ counts }) => [...counts.values()]).reduce((a, b) => a + b, 0)
        // A group at the edge may hold some that lie behind it.
        expect(counted).toBeGreaterThanOrEqual(seen.length)
        for (const [k, { first, last }] of groups.entries()) {
          const x = (mark: Mark) => (mark.frame / view.to) * 1000
          expect(x(last) - x(first)).toBeLessThan(24)
          const before = groups[k - 1]
          if (before) expect(x(first) - x(before.first)).toBeGreaterThanOrEqual(24)
        }
      }),
    )
  })

  it('stay the same while the view moves', () => {
    fc.assert(
      fc.property(marks, fc.integer({ min: 0, max: 40_000 }), (all, by) => {
        const groups = markGroups(all, whole, 1000, 24).map(({ first, last }) => [first.frame, last.frame])
        const moved = markGroups(all, { from: by, to: FRAMES + by }, 1000, 24)
        for (const { first, last } of moved) expect(groups).toContainEqual([first.frame, last.frame])
      }),
    )
  })

  it('say what they hold and when', () => {
    const [single, group] = markGroups(
      [
        { kind: 'sibilant', frame: 8000 },
        { kind: 'sibilant', frame: 40_000 },
        { kind: 'sibilant', frame: 40_400 },
        { kind: 'clipped', frame: 40_800 },
        { kind: 'loop-end', frame: 41_200 },
      ],
      whole,
      1000,
      24,
    ).map((each) => groupWords(each, RATE))
    expect(single).toBe('Sibilant at 0:01.00')
    expect(group).toBe('2 sibilants, clipped samples, loop end, 0:05.00 to 0:05.15')
  })

  it('leave an end of the loop by itself where it overlaps nothing, so that it can be dragged', () => {
    const near: Mark[] = [
      { kind: 'sibilant', frame: 40_000 },
      { kind: 'loop-end', frame: 41_000 },
      { kind: 'sibilant', frame: 42_200 },
    ]
    const kinds = markGroups(near, whole, 1000, 24).map(({ counts }) => [...counts.keys()])
    expect(kinds).toEqual([['sibilant'], ['loop-end'], ['sibilant']])
  })
})
