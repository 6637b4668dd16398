import { act, cleanup, render, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it, vi } from 'vitest'
import { CareNote } from '../../../src/view/notices/care-note'
import { ErrorBoundary } from '../../../src/view/notices/error-boundary'
import { Notices } from '../../../src/view/notices/notices'
import { showOnPage } from '../keys/on-page'

const user = userEvent.setup()

function Part({ state }: { state: { readonly broken: boolean } }) {
  if (state.broken) throw new Error('broken on purpose')
  return <p>whole again</p>
}

afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
})

describe('notices', () => {
  it('tell everything that went wrong at once, and go one by one when they are dismissed', async () => {
    const { app } = showOnPage(<Notices />)
    const alert = screen.getByRole('alert')
    const problems = [{ message: 'notes.txt is not sound.' }, { message: 'band.wav was not opened.' }]
    act(() => app.take.setState({ problems }))
    act(() => app.evidence.setState({ problem: 'The figures could not be worked out.' }))
    for (const { message } of problems) expect(alert.textContent).toContain(message)
    const [first] = screen.getAllByRole('button', { name: 'Dismiss' })
    if (first) await user.click(first)
    expect(alert.textContent).not.toContain('notes.txt')
    expect(alert.textContent).toContain('band.wav was not opened.')
    for (const button of screen.getAllByRole('button', { name: 'Dismiss' })) await user.click(button)
    expect(alert.textContent).toBe('')
    expect(app.take.getState().problems).toEqual([])
  })
})

describe('care for ears', () => {
  it('names the exposure figures with their sources and can be dismissed', async () => {
    showOnPage(<CareNote />)
    const note = screen.getByRole('complementary', { name: 'Care for ears' })
    for (const part of [
      '98-126',
      '85 dBA for 8 hours',
      '3 dB',
      'H.870',
      '80 dBA',
      'cannot measure the level at your ear',
    ])
      expect(note.textContent).toContain(part)
    await user.click(screen.getByRole('button', { name: 'Dismiss' }))
    expect(screen.queryByRole('complementary')).toBeNull()
  })
})

describe('the error boundary', () => {
  it('keeps the rest of the page and shows the part again when asked', async () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined)
    const part = { broken: true }
    render(
      <>
        <p>the rest</p>
        <ErrorBoundary what="The part">
          <Part state={part} />
        </ErrorBoundary>
      </>,
    )
    expect(screen.getByText('the rest')).toBeDefined()
    expect(screen.getByRole('alert').textContent).toContain('The part could not be drawn.')
    part.broken = false
    await user.click(screen.getByRole('button', { name: 'Show it again' }))
    expect(screen.getByText('whole again')).toBeDefined()
  })
})
