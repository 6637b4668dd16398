import { describe, expect, it } from 'vitest'
import { anchorOf, between, edgeSlopPx } from '../../../../src/view/take/loop/selection'
import { seekActionOf } from '../../../../src/view/take/time/seek-keys'
import { pinchBetween } from '../../../../src/view/take/time/use-pinch'

const press = (
  key: string,
  held: Partial<Record<'shiftKey' | 'altKey' | 'ctrlKey' | 'metaKey', boolean>> = {},
  viewSeconds = 60,
) =>
  seekActionOf({ key, shiftKey: false, altKey: false, ctrlKey: false, metaKey: false, ...held }, viewSeconds)

describe('keys on the take', () => {
  it('go by a second, with Shift by ten, with Alt by a tenth', () => {
    expect(press('ArrowRight')).toEqual({ type: 'by', seconds: 1 })
    expect(press('ArrowLeft', { shiftKey: true })).toEqual({ type: 'by', seconds: -10 })
    expect(press('ArrowRight', { altKey: true })).toEqual({ type: 'by', seconds: 0.1 })
  })

  it('go by less in a view of less than 4 s', () => {
    expect(press('ArrowRight', {}, 4)).toEqual({ type: 'by', seconds: 1 })
    expect(press('ArrowRight', {}, 2)).toEqual({ type: 'by', seconds: 0.5 })
    expect(press('PageUp', {}, 0.4)).toEqual({ type: 'by', seconds: 1 })
    expect(press('ArrowLeft', { altKey: true }, 0.04)).toEqual({ type: 'by', seconds: -0.001 })
  })

  it('go to both ends and zoom', () => {
    expect(press('Home')).toEqual({ type: 'to', end: 'start' })
    expect(press('End')).toEqual({ type: 'to', end: 'end' })
    expect(press('+')).toMatchObject({ type: 'zoom' })
    expect(press('0')).toEqual({ type: 'all' })
  })

  it('leave the keys of the browser and of the page alone', () => {
    expect(press('+', { ctrlKey: true })).toBeNull()
    expect(press('ArrowLeft', { metaKey: true })).toBeNull()
    expect(press('x')).toBeNull()
    expect(press(' ')).toBeNull()
  })
})

describe('choosing a loop', () => {
  const loop = { from: 1000, to: 2000 }

  it('starts where the pointer goes down', () => {
    expect(anchorOf(500, null, 20)).toBe(500)
    expect(anchorOf(1500, loop, 20)).toBe(1500)
  })

  it('takes hold of the nearer end of the loop there is, and keeps the other', () => {
    expect(anchorOf(1010, loop, 20)).toBe(2000)
    expect(anchorOf(1985, loop, 20)).toBe(1000)
  })

  it('takes hold of an end from as far as a fingertip covers, where it is a finger', () => {
    expect([edgeSlopPx('mouse'), edgeSlopPx('touch')].map((slop) => anchorOf(1020, loop, slop))).toEqual([
      1020, 2000,
    ])
  })

  it('goes either way', () => {
    expect(between(5, 2)).toEqual({ from: 2, to: 5 })
    expect(between(2, 5)).toEqual({ from: 2, to: 5 })
  })
})

describe('two fingers', () => {
  it('zoom by how much further apart they are, about the middle between them, and take it along', () => {
    expect(pinchBetween([100, 200], [50, 250])).toEqual({ factor: 2, centreX: 150, shiftX: 0 })
    expect(pinchBetween([200, 100], [160, 110])).toEqual({ factor: 0.5, centreX: 150, shiftX: -15 })
  })

  it('do not make it jump when they are side by side', () => {
    expect(pinchBetween([100, 101], [100, 110]).factor).toBe(1)
  })
})
