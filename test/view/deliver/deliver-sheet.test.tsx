import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { DeliverSheet } from '../../../src/view/deliver/deliver-sheet'
import { clippedWarning } from '../../../src/view/deliver/delivery-words'
import { showOnPage } from '../keys/on-page'

let page: ReturnType<typeof showOnPage>
const user = userEvent.setup()

beforeEach(() => {
  page = showOnPage(<DeliverSheet />)
  act(() => page.screen.setState({ sheet: 'deliver' }))
})
afterEach(cleanup)

describe('the delivery sheet', () => {
  it('offers 24-bit first and says what the file will be', () => {
    const [first] = screen.getAllByRole<HTMLInputElement>('radio')
    expect(first?.checked).toBe(true)
    expect(first?.parentElement?.textContent).toMatch(/^24-bit/)
    expect(
      screen.getByText(
        /^8 kHz, mono, 0:10\.0: it begins and ends with the take, frame for frame\..*Filters turn the phase/,
      ),
    ).toBeDefined()
  })

  it('delivers in the chosen format', async () => {
    const deliver = vi.spyOn(page.bench.deliveries, 'deliver').mockResolvedValue()
    await user.click(screen.getByRole('radio', { name: /^32-bit float/ }))
    await user.click(screen.getByRole('button', { name: 'Save the file' }))
    expect(page.bench.delivery.getState().format).toBe('float32')
    expect(deliver).toHaveBeenCalledTimes(1)
  })

  it('shows how far it is, can be cancelled, and cannot be started twice', async () => {
    const cancel = vi.spyOn(page.bench.deliveries, 'cancel')
    act(() => page.bench.delivery.setState({ working: 0.4 }))
    expect(screen.getByRole<HTMLProgressElement>('progressbar').value).toBeCloseTo(0.4, 6)
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Save the file' }).disabled).toBe(true)
    await user.click(screen.getByRole('button', { name: 'Cancel' }))
    expect(cancel).toHaveBeenCalledTimes(1)
  })

  it('names the file that was saved and warns of clipped samples', () => {
    const delivered = { fileName: 'Take 3 - evenhand, 24-bit.wav', clippedSamples: 3 }
    act(() => page.bench.delivery.setState({ delivered }))
    const news = screen.getByRole('status').textContent
    expect(news).toContain('Take 3 - evenhand, 24-bit.wav')
    expect(news).toContain('3 samples were above full scale and clipped')
  })
})

describe('clippedWarning', () => {
  it('counts in English and is silent about nothing', () => {
    expect(clippedWarning(0)).toBeNull()
    expect(clippedWarning(1)).toMatch(/^1 sample was /)
  })
})
