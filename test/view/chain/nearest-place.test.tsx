import { describe, expect, it } from 'vitest'
import { nearestPlace } from '../../../src/view/chain/nearest-place'

const row = (top: number) => [0, 100, 200].map((left) => ({ left, right: left + 100, top, bottom: top + 50 }))

describe('where a dragged stage would go', () => {
  it('is the place of the box it is over', () => {
    expect(nearestPlace(row(0), 150, 25)).toBe(1)
  })

  it('is the nearest place from outside', () => {
    expect(nearestPlace(row(0), -80, 400)).toBe(0)
    expect(nearestPlace(row(0), 900, 25)).toBe(2)
  })

  it('is in the right line where the path takes more than one', () => {
    const lines = [...row(0), ...row(50)]
    expect(nearestPlace(lines, 150, 75)).toBe(4)
    expect(nearestPlace(lines, 150, 45)).toBe(1)
  })
})
