import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, expect, it } from 'vitest'
import { ReplacedTake } from '../../../src/view/notices/replaced-take'
import { timingWords } from '../../../src/view/notices/timing-words'
import { showOnPage, sound, take } from '../keys/on-page'

afterEach(cleanup)

const plainText = (text: string | null) => text?.replace(/[\u2068\u2069]/g, '') ?? null
const header = {
  container: 'MP3',
  codec: 'MP3',
  sampleRate: 8000,
  channels: 1,
  bitsPerSample: null,
  frames: null,
  durationSeconds: 10,
} as const
const late = { mostLateMs: 35.2, missingMs: 0 }

it('says by how much a file may start late and what is missing, and nothing where all is known', () => {
  expect(timingWords(null)).toBeNull()
  expect(timingWords(take)).toBeNull()
  expect(timingWords({ ...take, timing: null })).toBeNull()
  expect(plainText(timingWords({ name: 'a.mp3', timing: late }))).toBe(
    'a.mp3 may start up to 36 ms late: how much silence its encoder added could not be determined. Use WAV or FLAC where timing matters.',
  )
  expect(plainText(timingWords({ name: 'a.m4a', timing: { mostLateMs: 21.3, missingMs: 18.7 } }))).toMatch(
    /^a\.m4a may start up to 22 ms late, and 19 ms of it are missing, probably at its end: /,
  )
})

it('stands in the note on a take, and in one on a backing that comes later', async () => {
  const { app } = showOnPage(<ReplacedTake />)
  const text = () => plainText(screen.getByRole('status').textContent)
  const opened = { ...take, header, name: 'a.mp3', sound: { ...sound }, timing: late }
  act(() => app.take.setState({ take: opened }))
  expect(text()).toMatch(/Replaced Take 3\.wav\..* a\.mp3 may start up to 36 ms late/)
  await userEvent.click(screen.getByRole('button', { name: 'Close the note' }))
  expect(text()).toBe('')
  act(() => app.take.setState({ take: { ...opened, timing: null } }))
  act(() => app.take.setState({ backing: { name: 'c.m4a', sound: { ...sound }, timing: late } }))
  expect(text()).toMatch(/^a\.mp3: c\.m4a may start up to 36 ms late/)
})
