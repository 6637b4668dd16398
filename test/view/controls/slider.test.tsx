import { cleanup, fireEvent, render, screen } from '@testing-library/react'
import { useState } from 'react'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type NumberParameter, stageDefinitions } from '../../../src/core'
import { Slider } from '../../../src/view/controls/slider'

const { thresholdDb: threshold, attackMs: attack } = stageDefinitions.compressor.parameters
/** 16 px of them are the ring. */
const WIDTH = 136
const TRAVEL = 120

let rests: number
let changes: number[]

function Shown({ parameter, first }: { parameter: NumberParameter; first: number }) {
  const [value, setValue] = useState(first)
  return (
    <Slider
      parameter={parameter}
      value={value}
      label="it"
      onChange={(next) => {
        changes.push(next)
        setValue(next)
      }}
      onRest={() => void rests++}
    />
  )
}

function show(parameter: typeof threshold, first: number) {
  if (parameter.type !== 'number') throw new Error('no number')
  render(<Shown parameter={parameter} first={first} />)
}

const slider = () => screen.getByRole('slider')
const down = (x: number, pointerType = 'mouse') =>
  fireEvent.pointerDown(slider(), { pointerId: 1, button: 0, clientX: x, clientY: 10, pointerType })
const move = (x: number, keys = {}, y = 10) =>
  fireEvent.pointerMove(window, { pointerId: 1, clientX: x, clientY: y, ...keys })
const up = () => fireEvent.pointerUp(window, { pointerId: 1 })
/** Where the ring of a threshold stands. */
const ringAt = (thresholdDb: number) => 8 + ((thresholdDb + 80) / 80) * TRAVEL

beforeEach(() => {
  rests = 0
  changes = []
  vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockImplementation(
    () => new DOMRect(0, 0, WIDTH, 24),
  )
})
afterEach(() => {
  vi.restoreAllMocks()
  cleanup()
})

describe('a slider that is dragged', () => {
  it('moves by one small step of its parameter for a pixel, though its line is shorter than that', () => {
    show(threshold, -40)
    down(ringAt(-40))
    for (const [px, db] of [
      [1, -39.5],
      [2, -39],
      [10, -35],
      [-4, -42],
    ] as const) {
      move(ringAt(-40) + px)
      expect(changes.at(-1)).toBe(db)
    }
    up()
    expect(rests).toBeGreaterThan(1)
  })

  it('moves a tenth as far while Alt is held', () => {
    show(threshold, -40)
    down(ringAt(-40))
    move(ringAt(-40) + 2, { altKey: true })
    expect(changes.at(-1)).toBe(-39.9)
    move(ringAt(-40) + 4)
    expect(changes.at(-1)).toBe(-38.9)
  })

  it('stays where it is when its ring is pressed', () => {
    show(threshold, -40)
    down(ringAt(-40) + 5)
    expect(changes).toEqual([])
    up()
    expect(changes).toEqual([])
  })

  it('goes to where its line is pressed', () => {
    show(threshold, -40)
    down(ringAt(-20))
    expect(changes).toEqual([-20])
    move(ringAt(-20) + 1)
    expect(changes.at(-1)).toBe(-19.5)
  })

  it('leaves no step out where its line is longer than that: the ring follows the pointer', () => {
    vi.restoreAllMocks()
    vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockImplementation(
      () => new DOMRect(0, 0, 8016, 24),
    )
    show(attack, 5)
    const { min, max } = attack.type === 'number' ? attack : { min: 1, max: 1 }
    const ring = 8 + 8000 * (Math.log(5 / min) / Math.log(max / min))
    down(ring)
    move(ring + 800)
    expect(changes.at(-1)).toBeCloseTo(5 * (max / min) ** 0.1, 1)
  })

  it('takes nothing from the browser while it is pressed, and everything else', () => {
    show(threshold, -40)
    down(ringAt(-40))
    fireEvent.change(slider(), { target: { value: 0.9 } })
    expect(changes).toEqual([])
  })

  it('takes what comes without a pointer, as from a screen reader', () => {
    show(threshold, -40)
    fireEvent.change(slider(), { target: { value: 0.75 } })
    expect(changes.at(-1)).toBe(-20)
  })
})

describe('a finger on a slider', () => {
  it('leaves it alone where it swipes across', () => {
    show(threshold, -40)
    down(ringAt(-20), 'touch')
    move(ringAt(-20), {}, 60)
    move(ringAt(-20) + 30, {}, 90)
    up()
    expect(changes).toEqual([])
  })

  it('sets it where it moves along, from where it went down', () => {
    show(threshold, -40)
    down(ringAt(-20), 'touch')
    expect(changes).toEqual([])
    move(ringAt(-20) + 10)
    expect(changes.at(-1)).toBe(-15)
  })

  it('sets it with a tap, once it is lifted', () => {
    show(threshold, -40)
    down(ringAt(-20), 'touch')
    expect(changes).toEqual([])
    up()
    expect(changes).toEqual([-20])
  })
})
