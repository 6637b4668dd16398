import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it } from 'vitest'
import type { FileHeader } from '../../../src/files/file-header'
import type { Backing, Take } from '../../../src/session/take/take-store'
import { ReplacedTake } from '../../../src/view/notices/replaced-take'
import { takeNews } from '../../../src/view/notices/take-news'
import { showOnPage, sound, take } from '../keys/on-page'

const header: FileHeader = {
  container: 'WAV',
  codec: 'PCM',
  sampleRate: 8000,
  channels: 1,
  bitsPerSample: 16,
  frames: 80_000,
  durationSeconds: 10,
}
const demo: Take = { ...take, name: 'Demo', sound: { ...sound } }
const own: Take = { ...take, name: 'Take 4.wav', header, sound: { ...sound } }
const band: Backing = { name: 'Band.wav', sound }
const other: Backing = { name: 'Other.wav', sound: { ...sound } }
const ofDemo: Backing = { name: 'Demo, backing', sound: { ...sound }, ofDemo: true }

/** Without the marks around names. */
const plainText = (text: string | null) => text?.replace(/[\u2068\u2069]/g, '') ?? null
const newsOf = (...given: Parameters<typeof takeNews>) => plainText(takeNews(...given))

describe('what is told when a take comes in the place of another', () => {
  it('is nothing where nothing was there, or the same sound was measured meanwhile', () => {
    expect(takeNews({ take: null, backing: null }, { take: demo, backing: ofDemo }, false)).toBeNull()
    const measured = { ...own, measures: null }
    expect(takeNews({ take: own, backing: null }, { take: measured, backing: null }, true)).toBeNull()
  })

  it('names what was removed with the demo', () => {
    const news = newsOf({ take: demo, backing: ofDemo }, { take: own, backing: null }, true)
    expect(news).toBe(
      'Replaced Demo. Your chain is unchanged. Removed the demo backing. The loop was cleared.',
    )
  })

  it('tells a backing that stays from one that could not, and from one that was replaced or removed since', () => {
    const before = { take: demo, backing: band }
    const news = (backing: Backing | null) => newsOf(before, { take: own, backing }, false)
    expect(news(band)).toBe('Replaced Demo. Your chain is unchanged. Kept the backing Band.wav.')
    expect(news(null)).toContain('Removed the backing Band.wav.')
    expect(news(other)).toContain('Other.wav replaced the backing Band.wav.')
    const faster = { ...before, backing: { ...band, sound: { ...sound, sampleRate: 16_000 } } }
    expect(newsOf(faster, { take: own, backing: null }, false)).toContain(
      'Removed the backing Band.wav: its sample rate differs from the take’s.',
    )
  })

  it('names a backing that came with the take', () => {
    const news = newsOf({ take: demo, backing: null }, { take: own, backing: band }, false)
    expect(news).toContain('Backing: Band.wav.')
    const instead = newsOf({ take: demo, backing: ofDemo }, { take: own, backing: band }, false)
    expect(instead).toContain('Band.wav replaced the demo backing.')
  })
})

describe('the notice of it', () => {
  afterEach(cleanup)

  const text = () => plainText(screen.getByRole('status').textContent)

  it('comes with the take, says that the loop was cleared, and goes when it was read', async () => {
    const { app } = showOnPage(<ReplacedTake />)
    act(() => app.listening.setLoop({ from: 0, to: 8000 }))
    act(() => app.take.setState({ take: own }))
    expect(text()).toContain('Take 4.wav: Replaced Take 3.wav.')
    expect(text()).toContain('The loop was cleared')
    await userEvent.click(screen.getByRole('button', { name: 'Close the note' }))
    expect(text()).toBe('')
  })

  it('is true of a backing that is opened after the take, as when both are dropped', () => {
    const { app } = showOnPage(<ReplacedTake />)
    act(() => app.take.setState({ backing: band }))
    act(() => app.take.setState({ take: own }))
    expect(text()).toContain('Kept the backing Band.wav.')
    act(() => app.take.setState({ backing: other }))
    expect(text()).not.toContain('Kept')
    expect(text()).toContain('Other.wav replaced the backing Band.wav.')
  })

  it('offers what the demo replaced', async () => {
    const { app } = showOnPage(<ReplacedTake />)
    act(() => app.take.setState({ take: own }))
    act(() => app.take.setState({ take: demo, replaced: { take: own, backing: null } }))
    expect(text()).toContain('Demo: Replaced Take 4.wav.')
    expect(screen.getByRole('button', { name: 'Restore it' })).toBeDefined()
    await userEvent.click(screen.getByRole('button', { name: 'Discard it' }))
    expect(app.take.getState().replaced).toBeNull()
    expect(text()).toBe('')
  })
})
