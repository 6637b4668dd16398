import { act, cleanup, screen } from '@testing-library/react'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { moveStage } from '../../../src/session/chain/chain-edits'
import { usePassingWords } from '../../../src/view/context/use-passing-words'
import { showInApp } from '../chain/in-app'

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

describe('words for a live region', () => {
  it('go when they have had time to be spoken', () => {
    showInApp(<Told />)
    const told = screen.getByRole('button')
    act(() => told.click())
    expect(told.textContent).toBe('moved')
    act(() => vi.advanceTimersByTime(9000))
    expect(told.textContent).toBe('moved')
    act(() => vi.advanceTimersByTime(2000))
    expect(told.textContent).toBe('nothing')
  })

  it('go with the next change of the chain, when they may no longer be so', () => {
    const { chain } = showInApp(<Told />)
    act(() => {
      chain.getState().edit(moveStage('sibilance', 0))
      screen.getByRole('button').click()
    })
    expect(screen.getByRole('button').textContent).toBe('moved')
    act(() => chain.getState().undo())
    expect(screen.getByRole('button').textContent).toBe('nothing')
  })
})
