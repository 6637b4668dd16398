import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it } from 'vitest'
import type { App } from '../../../../src/session/app'
import { MarksRow } from '../../../../src/view/take/marks/marks-row'
import { showOnPage, sound, take } from '../../keys/on-page'

const user = userEvent.setup()
let app: App
const buttons = () => screen.getAllByRole('button')
const names = () => buttons().map((button) => button.getAttribute('aria-label'))

beforeEach(() => {
  const view = { from: 0, to: 80_000 }
  app = showOnPage(<MarksRow view={view} sampleRate={8000} width={1000} height={12} textScale={1} />).app
  const sibilants = [1, 4, 4.1].map((startSeconds) => ({
    startSeconds,
    endSeconds: startSeconds + 0.05,
    levelDb: null,
  }))
  const marks = { sibilants, clipped: [{ from: 60_000, to: 60_040 }] }
  act(() => app.take.setState({ take: { ...take, marks } }))
})
afterEach(cleanup)

describe('the row of marks', () => {
  it('names what is at each place and when, those that would overlap as one', () => {
    expect(names()).toEqual([
      'Sibilant at 0:01.00',
      '2 sibilants, 0:04.00 to 0:04.10',
      'Clipped samples at 0:07.50',
    ])
    act(() => app.listening.setLoop({ from: 16_000, to: 32_100 }))
    expect(names()).toEqual([
      'Sibilant at 0:01.00',
      'Loop start at 0:02.00',
      '2 sibilants, loop end, 0:04.00 to 0:04.10',
      'Clipped samples at 0:07.50',
    ])
  })

  it('is one stop of Tab: arrows go from mark to mark, and Enter goes there', async () => {
    await user.tab()
    expect(document.activeElement).toBe(buttons()[0])
    await user.keyboard('{ArrowRight}{ArrowRight}')
    expect(document.activeElement).toBe(buttons()[2])
    await user.keyboard('{Enter}')
    expect(app.listen.getState().positionFrame).toBe(60_000)
    await user.keyboard('{ArrowRight}{Home}{ArrowLeft}{End}{ArrowLeft}{Enter}')
    expect(app.listen.getState().positionFrame).toBe(4 * sound.sampleRate)
    expect(buttons().map((button) => button.tabIndex)).toEqual([-1, 0, -1])
    await user.tab()
    expect(screen.getByRole('toolbar').contains(document.activeElement)).toBe(false)
  })

  it('is not there without marks', () => {
    act(() => app.take.setState({ take }))
    expect(screen.queryByRole('toolbar')).toBeNull()
  })
})
