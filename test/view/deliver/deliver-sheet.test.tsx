import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import type { DeliveredFile, FileLevels } from '../../../src/session/delivery-store'
import { DeliverSheet } from '../../../src/view/deliver/deliver-sheet'
import { clippedWarning } from '../../../src/view/deliver/delivery-words'
import { showOnPage } from '../keys/on-page'

const saved: DeliveredFile = {
  fileName: 'Take 3 - evenhand, 24-bit.wav',
  format: 'pcm24',
  clippedSamples: 0,
  isDithered: false,
}
let page: ReturnType<typeof showOnPage>
const user = userEvent.setup()
/** Puts in what the file would hold. */
const show = (levels: FileLevels) => act(() => page.app.delivery.setState({ levels }))
const status = () =>
  screen
    .getAllByRole('status')
    .map(({ textContent }) => textContent)
    .join(' ')

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
        /^8 kHz, mono, 0:10\.0: the whole take, even if a loop is set, aligned with the take to the sample\./,
      ),
    ).toBeDefined()
    expect(screen.getByText(/^Filters shift phase: use the file instead of the original/)).toBeDefined()
  })

  it('has the focus on its heading when it opens', () => {
    expect(document.activeElement).toBe(screen.getByRole('heading', { name: 'Deliver' }))
  })

  it('says how loud the file will be, and its peak, once they are in', () => {
    expect(screen.getByText('Integrated loudness –, true peak –.')).toBeDefined()
    show({ integratedLufs: -19.84, truePeakDbtp: -6.6, samplesOver: 0 })
    expect(screen.getByText('Integrated loudness −19.8 LUFS, true peak −6.6 dBTP.')).toBeDefined()
    expect(screen.queryByRole('button', { name: /^Lower the output/ })).toBeNull()
  })

  it('tells before anything is saved that samples would clip, and lowers the output in one press', async () => {
    show({ integratedLufs: -9, truePeakDbtp: 4.83, samplesOver: 1234 })
    expect(
      screen.getByText('This file would clip: 1234 samples are over full scale, true peak +4.8 dBTP.'),
    ).toBeDefined()
    const { chain } = page.app
    const before = chain.getState().chain
    await user.click(screen.getByRole('button', { name: 'Lower the output by 4.9 dB' }))
    expect(chain.getState().past.map(({ words }) => words)).toEqual(['output lowered by 4.9 dB'])
    expect(chain.getState().chain.stages.at(-1)?.settings).toEqual({ gainDb: -4.9 })
    act(() => chain.getState().undo())
    expect(chain.getState().chain).toEqual(before)
  })

  it('takes float, which cannot clip, in one press, and says what becomes of peaks above full scale', async () => {
    show({ integratedLufs: -9, truePeakDbtp: 4.83, samplesOver: 1234 })
    await user.click(screen.getByRole('button', { name: 'Choose 32-bit float' }))
    expect(page.app.delivery.getState().format).toBe('float32')
    show({ integratedLufs: -9, truePeakDbtp: 4.83, samplesOver: 0 })
    expect(screen.getByText(/stay whole in float \(true peak \+4\.8 dBTP\)/)).toBeDefined()
  })

  it('tells of a wave that goes above full scale between samples', () => {
    show({ integratedLufs: -9, truePeakDbtp: 0.21, samplesOver: 0 })
    expect(screen.getByText(/^No sample clips, but the wave between samples/)).toBeDefined()
    expect(screen.getByRole('button', { name: 'Lower the output by 0.3 dB' })).toBeDefined()
    expect(screen.queryByRole('button', { name: /float$/ })).toBeNull()
  })

  it('gives the focus back to its button when the file was saved or cancelled', () => {
    const button = screen.getByRole('button', { name: 'Save file' })
    act(() => page.app.delivery.setState({ working: 0 }))
    expect(document.activeElement).not.toBe(button)
    act(() => page.app.delivery.setState({ working: null }))
    expect(document.activeElement).toBe(button)
  })

  it('delivers in the chosen format', async () => {
    const deliver = vi.spyOn(page.app.deliveries, 'deliver').mockResolvedValue()
    await user.click(screen.getByRole('radio', { name: /^32-bit float/ }))
    await user.click(screen.getByRole('button', { name: 'Save file' }))
    expect(page.app.delivery.getState().format).toBe('float32')
    expect(deliver).toHaveBeenCalledTimes(1)
  })

  it('shows how far it is, can be cancelled, and cannot be started twice', async () => {
    const cancel = vi.spyOn(page.app.deliveries, 'cancel')
    act(() => page.app.delivery.setState({ working: 0.4 }))
    expect(screen.getByRole<HTMLProgressElement>('progressbar').value).toBeCloseTo(0.4, 6)
    expect(screen.getByRole<HTMLButtonElement>('button', { name: 'Save file' }).disabled).toBe(true)
    await user.click(screen.getByRole('button', { name: 'Cancel' }))
    expect(cancel).toHaveBeenCalledTimes(1)
  })

  it('names the file that was saved and warns of clipped samples', () => {
    act(() => page.app.delivery.setState({ delivered: { ...saved, clippedSamples: 3 } }))
    const news = status()
    expect(news).toContain('Take 3 - evenhand, 24-bit.wav')
    expect(news).toContain('3 samples were over full scale and clipped')
  })
})

describe('dither, in the words of the sheet', () => {
  const note = /^16 bits are dithered/

  it('is explained where it is added: with 16 bits, and at no other format', async () => {
    expect(screen.queryByText(note)).toBeNull()
    await user.click(screen.getByRole('radio', { name: '16-bit' }))
    expect(screen.getByText(note).textContent).toContain('−96 dBFS RMS')
    await user.click(screen.getByRole('radio', { name: /^32-bit float/ }))
    expect(screen.queryByText(note)).toBeNull()
  })

  it('is told of a 16-bit file that was saved, and so is that it needed none', () => {
    const news = status
    const tell = (delivered: DeliveredFile) => act(() => page.app.delivery.setState({ delivered }))
    tell({ ...saved, format: 'pcm16', isDithered: true })
    expect(news()).toContain('Dithered.')
    tell({ ...saved, format: 'pcm16' })
    expect(news()).toContain('No dither needed')
    tell(saved)
    expect(news()).not.toMatch(/dither/)
  })
})

describe('clippedWarning', () => {
  it('counts in English and is silent about nothing', () => {
    expect(clippedWarning(0)).toBeNull()
    expect(clippedWarning(1)).toMatch(/^1 sample was /)
  })
})
