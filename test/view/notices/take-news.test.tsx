import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, describe, expect, it } from 'vitest'
import type { FileHeader } from '../../../src/audio/files/file-header'
import type { Backing, Take } from '../../../src/state/take-store'
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
const ofDemo: Backing = { name: 'Demo, backing', sound, ofDemo: true }

describe('what is told when a take comes in the place of another', () => {
  it('is nothing where nothing was there, or the same sound was measured meanwhile', () => {
    expect(takeNews({ take: null, backing: null }, { take: demo, backing: ofDemo }, false)).toBeNull()
    const measured = { ...own, measures: null }
    expect(takeNews({ take: own, backing: null }, { take: measured, backing: null }, true)).toBeNull()
  })

  it('names what stayed and what was put away with the demo', () => {
    const news = takeNews({ take: demo, backing: ofDemo }, { take: own, backing: null }, true)
    expect(news).toBe('In the place of Demo. The chain stayed. The demo’s backing went. The loop went.')
  })

  it('tells a backing that stays from one that could not', () => {
    const stays = takeNews({ take: demo, backing: band }, { take: own, backing: band }, false)
    expect(stays).toContain('The backing Band.wav stayed.')
    expect(stays).not.toContain('loop')
    const goes = takeNews({ take: demo, backing: band }, { take: own, backing: null }, false)
    expect(goes).toContain('The backing Band.wav went, for its sample rate is another')
  })
})

describe('the notice of it', () => {
  afterEach(cleanup)

  it('comes with the take, says that the loop went, and goes when it was read', async () => {
    const { bench } = showOnPage(<ReplacedTake />)
    act(() => bench.listening.setLoop({ from: 0, to: 8000 }))
    act(() => bench.take.setState({ take: own }))
    const notice = screen.getByRole('status')
    expect(notice.textContent).toContain('Take 4.wav: In the place of Take 3.wav.')
    expect(notice.textContent).toContain('The loop went')
    await userEvent.click(screen.getByRole('button', { name: 'Close the note' }))
    expect(notice.textContent).toBe('')
  })

  it('offers what the demo replaced', async () => {
    const { bench } = showOnPage(<ReplacedTake />)
    act(() => bench.take.setState({ take: own }))
    act(() => bench.take.setState({ take: demo, replaced: { take: own, backing: null } }))
    expect(screen.getByRole('status').textContent).toContain('Demo: In the place of Take 4.wav.')
    expect(screen.getByRole('button', { name: 'Bring it back' })).toBeDefined()
    await userEvent.click(screen.getByRole('button', { name: 'Let it go' }))
    expect(bench.take.getState().replaced).toBeNull()
    expect(screen.getByRole('status').textContent).toBe('')
  })
})
