import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import {
  around,
  frameAtX,
  isLeaving,
  moved,
  type TimeView,
  wholeTake,
  xOfFrame,
  zoomed,
} from '../../../../src/view/take/time/time-view'

const FRAMES = 48_000
const LEAST = 480

/** A view within the take, no shorter than may be. */
const views = fc
  .tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true }))
  .map(([place, size]): TimeView => {
    const length = LEAST + size * (FRAMES - LEAST)
    const from = place * (FRAMES - length)
    return { from, to: from + length }
  })
const shares = fc.double({ min: 0, max: 1, noNaN: true })

function expectWithinTake(view: TimeView) {
  expect(view.from).toBeGreaterThanOrEqual(0)
  expect(view.to).toBeLessThanOrEqual(FRAMES + 1e-6)
  expect(view.to - view.from).toBeGreaterThanOrEqual(LEAST - 1e-6)
}

describe('a view of the take', () => {
  it('stays within the take, however it is zoomed and moved', () => {
    fc.assert(
      fc.property(
        views,
        shares,
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: -1e6, max: 1e6, noNaN: true }),
        (view, share, factor, by) => {
          const anchor = view.from + share * (view.to - view.from)
          expectWithinTake(zoomed(view, factor, anchor, FRAMES, LEAST))
          expectWithinTake(moved(view, by, FRAMES))
        },
      ),
    )
  })

  it('keeps the anchor in place when zooming in', () => {
    fc.assert(
      fc.property(views, shares, fc.double({ min: 1, max: 50, noNaN: true }), (view, share, factor) => {
        const anchor = view.from + share * (view.to - view.from)
        const closer = zoomed(view, factor, anchor, FRAMES, LEAST)
        expect(xOfFrame(closer, anchor, 1)).toBeCloseTo(share, 6)
      }),
    )
  })

  it('moves without changing its length', () => {
    fc.assert(
      fc.property(views, fc.double({ min: -1e5, max: 1e5, noNaN: true }), (view, by) => {
        const later = moved(view, by, FRAMES)
        expect(later.to - later.from).toBeCloseTo(view.to - view.from, 3)
      }),
    )
  })

  it('around a stretch shows all of it', () => {
    fc.assert(
      fc.property(views, (range) => {
        const view = around(range, FRAMES, LEAST)
        expectWithinTake(view)
        expect(view.from).toBeLessThanOrEqual(range.from + 1e-6)
        expect(view.to).toBeGreaterThanOrEqual(range.to - 1e-6)
      }),
    )
  })

  it('around a very short stretch is not shorter than may be seen', () => {
    const view = around({ from: 1000, to: 1010 }, FRAMES, LEAST)
    expect(view.to - view.from).toBeCloseTo(LEAST, 6)
  })
})

describe('a playhead', () => {
  const view = { from: 100, to: 200 }

  it('turns the page when it runs out of the view, at either end', () => {
    expect(isLeaving(view, 199, 203)).toBe(true)
    expect(isLeaving(view, 150, 40)).toBe(true)
  })

  it('leaves the view alone that somebody moved elsewhere', () => {
    expect(isLeaving(view, 150, 160)).toBe(false)
    expect(isLeaving(view, 300, 310)).toBe(false)
    expect(isLeaving(view, 90, 101)).toBe(false)
  })
})

describe('places and frames', () => {
  it('turn into one another', () => {
    fc.assert(
      fc.property(views, shares, (view, share) => {
        const frame = frameAtX(view, share * 800, 800, FRAMES)
        expect(xOfFrame(view, frame, 800)).toBeCloseTo(share * 800, 6)
      }),
    )
  })

  it('outside the picture are still within the take', () => {
    expect(frameAtX(wholeTake(FRAMES), -50, 800, FRAMES)).toBe(0)
    expect(frameAtX(wholeTake(FRAMES), 900, 800, FRAMES)).toBe(FRAMES)
  })
})
