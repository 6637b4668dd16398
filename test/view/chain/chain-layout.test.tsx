import { describe, expect, it } from 'vitest'
import { cardPlace, chainLayout } from '../../../src/view/chain/chain-layout'

/** Content of the chain at 1440, 1024 and 360 px, rem. */
const [WIDE, NARROW, PHONE] = [86.5, 62, 21]

describe('the layout of the chain', () => {
  it.each([
    [4, WIDE, 'cards', 4],
    [5, WIDE, 'cards', 5],
    [9, WIDE, 'cards', 5],
    [12, WIDE, 'cards', 4],
    [13, WIDE, 'compact', 7],
    [32, WIDE, 'compact', 7],
    [4, NARROW, 'cards', 4],
    [5, NARROW, 'cards', 3],
    [32, PHONE, 'row', 32],
    [0, WIDE, 'cards', 1],
  ] as const)('of %i stages at %f rem is %s, %i side by side', (count, width, form, columns) => {
    expect(chainLayout(count, width)).toEqual({ form, columns })
  })

  it('has every stage in the line behind the one before, and says where lines break', () => {
    const layout = chainLayout(9, WIDE)
    const places = Array.from({ length: 9 }, (_, index) => cardPlace(index, 9, layout))
    expect(places.map(({ column, line }) => 10 * line + column)).toEqual([0, 1, 2, 3, 4, 10, 11, 12, 13])
    expect(places.map(({ breaks }) => breaks).indexOf(true)).toBe(4)
    expect(places.map(({ continues }) => continues).indexOf(true)).toBe(5)
    expect(places.filter(({ breaks, continues }) => breaks || continues)).toHaveLength(2)
  })
})
