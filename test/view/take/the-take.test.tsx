import { act, cleanup, fireEvent, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { App } from '../../../src/session/app'
import { TheTake } from '../../../src/view/take/the-take'
import { showOnPage, sound } from '../keys/on-page'

let app: App
const user = userEvent.setup()
const surface = () => screen.findByRole('slider', { name: 'Position in the take' })
const seconds = () => app.listen.getState().positionFrame / sound.sampleRate
const loopSeconds = () => {
  const { loop } = app.listen.getState()
  return loop && [loop.from / sound.sampleRate, loop.to / sound.sampleRate]
}

beforeEach(() => {
  // A picture of 1000 px for the take's 10 s.
  vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, 0, 1000, 300))
  app = showOnPage(<TheTake />).app
})
afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
})

async function drag(fromX: number, toX: number) {
  const element = await surface()
  fireEvent.pointerDown(element, { button: 0, clientX: fromX, pointerId: 1 })
  fireEvent.pointerMove(element, { clientX: (fromX + toX) / 2, pointerId: 1 })
  fireEvent.pointerMove(element, { clientX: toX, pointerId: 1 })
  fireEvent.pointerUp(element, { clientX: toX, pointerId: 1 })
}

describe('the take', () => {
  it('goes where it is clicked, even with a trembling hand, and leaves the loop alone', async () => {
    app.listening.setLoop({ from: 8000, to: 24_000 })
    await drag(400, 402)
    expect(seconds()).toBeCloseTo(4.02, 1)
    expect(loopSeconds()).toEqual([1, 3])
  })

  it('repeats what is dragged over, in either direction', async () => {
    await drag(700, 200)
    expect(loopSeconds()).toEqual([2, 7])
    expect(seconds()).toBe(0)
  })

  it('moves one end of the loop when that end is dragged', async () => {
    app.listening.setLoop({ from: 16_000, to: 56_000 })
    await drag(702, 900)
    expect(loopSeconds()).toEqual([2, 9])
  })

  it('forgets a drag that the system takes away', async () => {
    const element = await surface()
    fireEvent.pointerDown(element, { button: 0, clientX: 100, pointerId: 1 })
    fireEvent.pointerMove(element, { clientX: 400, pointerId: 1 })
    fireEvent.pointerCancel(element, { pointerId: 1 })
    fireEvent.pointerUp(element, { clientX: 400, pointerId: 1 })
    expect(loopSeconds()).toBeNull()
    expect(seconds()).toBe(0)
  })

  it('zooms with two fingers and chooses no loop by it', async () => {
    const element = await surface()
    fireEvent.pointerDown(element, { button: 0, clientX: 400, pointerId: 1 })
    fireEvent.pointerDown(element, { button: 0, clientX: 600, pointerId: 2 })
    fireEvent.pointerMove(element, { clientX: 300, pointerId: 1 })
    fireEvent.pointerMove(element, { clientX: 700, pointerId: 2 })
    fireEvent.pointerUp(element, { clientX: 300, pointerId: 1 })
    fireEvent.pointerUp(element, { clientX: 700, pointerId: 2 })
    expect(loopSeconds()).toBeNull()
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'whole take' }).disabled).toBe(false)
    // Half the take is seen now, about its middle: the left edge stands at 2.5 s.
    await drag(0, 0)
    expect(seconds()).toBeCloseTo(2.5, 1)
  })

  it('is gone about in from the keyboard and says where it stands', async () => {
    const element = await surface()
    element.focus()
    await user.keyboard('{ArrowRight}{ArrowRight}{ArrowRight}{ArrowLeft}')
    expect(seconds()).toBe(2)
    expect(element.getAttribute('aria-valuetext')).toBe('2 seconds')
    await user.keyboard('{End}')
    expect(app.listen.getState().positionFrame).toBe(79_999)
  })

  it('takes a typed loop, keeps what cannot be read, and clears the loop', async () => {
    const from = await screen.findByRole('textbox', { name: 'Loop from' })
    await user.clear(from)
    await user.type(from, '1.5{Enter}')
    expect(loopSeconds()).toEqual([1.5, 10])
    const to = screen.getByRole('textbox', { name: 'to' })
    await user.clear(to)
    await user.type(to, 'later{Enter}')
    expect(to.getAttribute('aria-invalid')).toBe('true')
    expect(screen.getByText(/^Not understood\. Type seconds/)).toBeDefined()
    expect(loopSeconds()).toEqual([1.5, 10])
    await user.clear(to)
    await user.type(to, '1{Enter}')
    expect(screen.getByText(/^The loop starts at 0:01\.5\./)).toBeDefined()
    expect(loopSeconds()).toEqual([1.5, 10])
    await user.clear(to)
    await user.type(to, '0:04{Enter}')
    expect(loopSeconds()).toEqual([1.5, 4])
    await user.click(screen.getByRole('button', { name: 'Clear loop' }))
    expect(loopSeconds()).toBeNull()
  })

  it('goes nowhere behind the end of the take, and says where that is', async () => {
    const position = await screen.findByRole('textbox', { name: 'Position' })
    await user.clear(position)
    await user.type(position, '1:30{Enter}')
    expect(screen.getByText(/^The take ends at 0:10\.0\./)).toBeDefined()
    expect(app.listen.getState().positionFrame).toBe(0)
  })

  it('shows where a loop really is once it becomes another, whatever was typed before', async () => {
    const from = await screen.findByRole<HTMLInputElement>('textbox', { name: 'Loop from' })
    await user.clear(from)
    await user.type(from, 'early{Enter}')
    await user.tab()
    expect(from.value).toBe('early')
    act(() => app.listening.setLoop({ from: 16_000, to: 40_000 }))
    expect(from.value).toBe('0:02.0')
    expect(from.getAttribute('aria-invalid')).toBe('false')
  })
})
