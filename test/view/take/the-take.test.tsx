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

async function openTimes() {
  await user.click(await screen.findByRole('button', { name: /^Times/ }))
}

async function type(name: string, text: string) {
  const field = screen.getByRole('textbox', { name })
  await user.clear(field)
  await user.type(field, `${text}{Enter}`)
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
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Whole take' }).disabled).toBe(false)
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
    await openTimes()
    await type('Loop from', '1.5')
    expect(loopSeconds()).toEqual([1.5, 10])
    await type('to', 'later')
    const to = screen.getByRole('textbox', { name: 'to' })
    expect(to.getAttribute('aria-invalid')).toBe('true')
    expect(screen.getByText(/^Not understood\. Type seconds/)).toBeDefined()
    expect(loopSeconds()).toEqual([1.5, 10])
    await type('to', '0:04')
    expect(loopSeconds()).toEqual([1.5, 4])
    await user.click(screen.getByRole('button', { name: 'Clear loop' }))
    expect(loopSeconds()).toBeNull()
  })

  it('takes the other end of the loop along where one is typed behind it, and finds no fault', async () => {
    await openTimes()
    act(() => app.listening.setLoop({ from: 8000, to: 24_000 }))
    await type('Loop from', '5')
    expect(loopSeconds()).toEqual([5, 7])
    await type('to', '3')
    expect(loopSeconds()).toEqual([1, 3])
    await type('Loop from', '9')
    expect(loopSeconds()).toEqual([9, 10])
    for (const field of screen.getAllByRole('textbox'))
      expect(field.getAttribute('aria-invalid')).toBe('false')
    for (const alert of screen.getAllByRole('alert')) expect(alert.textContent).toBe('')
  })

  it('says where the loop is on the button that opens its times', async () => {
    expect(await screen.findByRole('button', { name: /^Times/ })).toBeDefined()
    act(() => app.listening.setLoop({ from: 8000, to: 24_000 }))
    const button = screen.getByRole('button', { name: 'Loop 0:01.0 – 0:03.0' })
    expect(button.getAttribute('aria-expanded')).toBe('false')
    await user.click(button)
    expect(button.getAttribute('aria-expanded')).toBe('true')
    await user.click(button)
    expect(screen.queryByRole('textbox', { name: 'Position' })).toBeNull()
  })

  it('makes no loop that is too short to be played, and loses none by a short drag', async () => {
    act(() => app.listening.setLoop({ from: 8000, to: 24_000 }))
    await drag(500, 505)
    expect(loopSeconds()).toEqual([5, 5.1])
    await drag(505, 500)
    expect(loopSeconds()).toEqual([5, 5.1])
    await drag(800, 795)
    expect(loopSeconds()).toEqual([7.9, 8])
  })

  it('is seen down to 5 ms, and the keys then go along in steps that stay in the picture', async () => {
    const element = await surface()
    element.focus()
    await user.keyboard('+'.repeat(20))
    const { seen } = app.view.getState()
    expect(((seen?.to ?? 0) - (seen?.from ?? 0)) / sound.sampleRate).toBeCloseTo(0.005, 6)
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Zoom in' }).disabled).toBe(true)
    await user.keyboard('{ArrowRight}')
    expect(seconds()).toBeCloseTo(0.00125, 6)
    expect(app.view.getState().seen).toEqual(seen)
  })

  it('follows where somebody goes, and turns no view so short that it would flash', async () => {
    await surface()
    act(() => app.view.setState({ seen: { from: 0, to: 80 } }))
    act(() => app.listening.seek(40_000))
    expect(app.view.getState().seen).toEqual({ from: 40_000, to: 40_080 })
    act(() => app.listen.setState({ playing: true, positionFrame: 40_200 }))
    expect(app.view.getState().seen).toEqual({ from: 40_000, to: 40_080 })
    act(() => app.view.setState({ seen: { from: 40_000, to: 48_000 } }))
    act(() => app.listen.setState({ positionFrame: 48_100 }))
    expect(app.view.getState().seen).toEqual({ from: 48_100, to: 56_100 })
  })

  it('goes nowhere behind the end of the take, and says where that is', async () => {
    await openTimes()
    await type('Position', '1:30')
    expect(screen.getByText(/^The take ends at 0:10\.0\./)).toBeDefined()
    expect(app.listen.getState().positionFrame).toBe(0)
  })

  it('shows where a loop really is once it becomes another, whatever was typed before', async () => {
    await openTimes()
    await type('Loop from', 'early')
    await user.tab()
    const from = screen.getByRole<HTMLInputElement>('textbox', { name: 'Loop from' })
    expect(from.value).toBe('early')
    act(() => app.listening.setLoop({ from: 16_000, to: 40_000 }))
    expect(from.value).toBe('0:02.0')
    expect(from.getAttribute('aria-invalid')).toBe('false')
  })
})
