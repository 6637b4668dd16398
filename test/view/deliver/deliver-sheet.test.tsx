import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { comparisonOf } from '../../../src/core'
import { setSetting } from '../../../src/session/chain/chain-edits'
import type { DeliveredFile } from '../../../src/session/delivery-store'
import { DeliverSheet } from '../../../src/view/deliver/deliver-sheet'
import { clippedWarning } from '../../../src/view/deliver/delivery-words'
import { inWords } from '../../../src/view/words/in-words'
import { evidenceOf } from '../../session/trials/trial-app'
import { showOnPage } from '../keys/on-page'

const saved: DeliveredFile = {
  fileName: 'Take 3 - evenhand, 24-bit.wav',
  format: 'pcm24',
  clippedSamples: 0,
  isDithered: false,
}
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
        /^8 kHz, mono, 0:10\.0: the whole take, even if a loop is set, aligned with the take to the sample\./,
      ),
    ).toBeDefined()
    expect(screen.getByText(/^Filters shift phase: use the file instead of the original/)).toBeDefined()
  })

  it('says how loud the file will be, and its peak, once they are in, and of no other chain', () => {
    const { app } = page
    expect(screen.getByText('Integrated loudness –, true peak –.')).toBeDefined()
    const { chain } = app.chain.getState()
    const evidence = evidenceOf(comparisonOf(chain, { kind: 'chain' }))
    act(() => app.evidence.setState({ evidence }))
    const { integratedLufs, truePeakDbtp } = evidence.processed.measures
    const figures = `Integrated loudness ${inWords(integratedLufs ?? 0)} LUFS, true peak ${inWords(truePeakDbtp ?? 0)} dBTP.`
    expect(screen.getByText(figures)).toBeDefined()
    // Compared up to the first stage only: that is not what is delivered.
    const upToFirst = evidenceOf(comparisonOf(chain, { kind: 'chain' }, chain.stages[0]?.id))
    act(() => app.evidence.setState({ evidence: upToFirst, working: null }))
    expect(screen.queryByText(/^Integrated loudness/)).toBeNull()
    expect(screen.getByText(/^The file is the whole current chain/)).toBeDefined()
    act(() => app.evidence.setState({ evidence, working: 0 }))
    expect(screen.getByText(figures)).toBeDefined()
    act(() => app.chain.getState().edit(setSetting('level', 'thresholdDb', -40)))
    expect(screen.getByText('Integrated loudness –, true peak –.')).toBeDefined()
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
    const news = screen.getByRole('status').textContent
    expect(news).toContain('Take 3 - evenhand, 24-bit.wav')
    expect(news).toContain('3 samples were above full scale and clipped')
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
    const news = () => screen.getByRole('status').textContent
    const show = (delivered: DeliveredFile) => act(() => page.app.delivery.setState({ delivered }))
    show({ ...saved, format: 'pcm16', isDithered: true })
    expect(news()).toContain('Dithered.')
    show({ ...saved, format: 'pcm16' })
    expect(news()).toContain('No dither needed')
    show(saved)
    expect(news()).not.toMatch(/dither/)
  })
})

describe('clippedWarning', () => {
  it('counts in English and is silent about nothing', () => {
    expect(clippedWarning(0)).toBeNull()
    expect(clippedWarning(1)).toMatch(/^1 sample was /)
  })
})
