import { act, cleanup, render, screen } from '@testing-library/react'
import { afterEach, beforeEach, expect, it, vi } from 'vitest'
import { usePassingWords } from '../../../src/view/notices/use-passing-words'

function Told() {
  const [words, say] = usePassingWords()
  return (
    <button type="button" onClick={() => say('moved')}>
      {words || 'nothing'}
    </button>
  )
}

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  cleanup()
  vi.useRealTimers()
})

it('words for a live region go when they have had time to be spoken', () => {
  render(<Told />)
  const told = screen.getByRole('button')
  act(() => told.click())
  expect(told.textContent).toBe('moved')
  act(() => vi.advanceTimersByTime(9000))
  expect(told.textContent).toBe('moved')
  act(() => vi.advanceTimersByTime(2000))
  expect(told.textContent).toBe('nothing')
})
