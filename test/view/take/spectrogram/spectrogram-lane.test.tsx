import { act, cleanup, screen } from '@testing-library/react'
import userEvent from '@testing-library/user-event'
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { ComputeError } from '../../../../src/compute/compute-error'
import type { SpectrogramInput, TilePiece } from '../../../../src/compute/jobs/spectrogram-job'
import type { RunOptions } from '../../../../src/compute/pool/pool'
import { SPECTROGRAM_ROWS, TILE_COLUMNS } from '../../../../src/core'
import type { App } from '../../../../src/session/app'
import { spectrogramLane } from '../../../../src/view/take/spectrogram/lazy-spectrogram-lane'
import { TheTake } from '../../../../src/view/take/the-take'
import { eventually } from '../../../setup/eventually'
import { showOnPage, sound } from '../../keys/on-page'
import { evidenceOf } from '../evidence-of'

/** A job that was asked for, and how to answer it. */
interface Asked {
  readonly input: SpectrogramInput
  readonly signal: AbortSignal | undefined
  readonly onPiece: ((piece: TilePiece) => void) | undefined
  end(): void
  fail(error: Error): void
}

const user = userEvent.setup()
let app: App
let asked: Asked[]
const lane = () => screen.findByRole('img', { name: /^Spectrogram/ })
const open = () => user.click(screen.getByRole('button', { name: /^Spectrogram/ }))

await spectrogramLane.load()
beforeEach(() => {
  vi.spyOn(HTMLElement.prototype, 'getBoundingClientRect').mockReturnValue(new DOMRect(0, 0, 1000, 300))
  asked = []
  app = showOnPage(<TheTake />).app
  vi.spyOn(app.compute, 'takeHash', 'get').mockReturnValue('hash')
  vi.spyOn(app.compute, 'run').mockImplementation((_kind, inputOf, options) => {
    const { signal, onPiece } = options as RunOptions<'spectrogram'>
    return new Promise((resolve, reject) => {
      asked.push({
        input: inputOf('hash') as SpectrogramInput,
        signal,
        onPiece,
        end: () => resolve(null),
        fail: reject,
      })
    })
  })
  act(() => app.evidence.setState({ evidence: evidenceOf(app, sound), working: null }))
})
afterEach(() => {
  cleanup()
  vi.restoreAllMocks()
})

/** Answers a job with silence in all of its tiles. */
async function answer(job: Asked | undefined) {
  await act(async () => {
    for (const tile of job?.input.tiles ?? [])
      job?.onPiece?.({ tile, levels: new Uint8Array(TILE_COLUMNS * SPECTROGRAM_ROWS) })
    job?.end()
  })
}

describe('the lane of the spectrogram', () => {
  it('is closed at first, and asks for nothing then', () => {
    expect(screen.queryByRole('img', { name: /^Spectrogram/ })).toBeNull()
    expect(app.view.getState().spectrogram).toBe(false)
  })

  it('asks for the side that is heard, then for the other, and says what of it is drawn', async () => {
    await open()
    const picture = await lane()
    await eventually(() => expect(asked).toHaveLength(1))
    expect(asked[0]?.input.stages.some(({ on }) => on)).toBe(true)
    expect(picture.getAttribute('aria-label')).toContain('not all of it is drawn yet')
    await answer(asked[0])
    expect((await lane()).getAttribute('aria-label')).toBe(
      'Spectrogram of what is seen of the take, with: level by frequency from 50 Hz to 4 kHz, the more ink the louder.',
    )
    await eventually(() => expect(asked).toHaveLength(2))
    expect(asked[1]?.input.stages.some(({ on }) => on)).toBe(false)
    await answer(asked[1])
    act(() => app.listening.setSide('bypassed'))
    expect((await lane()).getAttribute('aria-label')).toMatch(/, without: .*louder\.$/)
    expect(asked).toHaveLength(2)
  })

  it('gives up what is asked for when it is closed', async () => {
    await open()
    await eventually(() => expect(asked).toHaveLength(1))
    await open()
    expect(asked[0]?.signal?.aborted).toBe(true)
    expect(screen.queryByRole('img', { name: /^Spectrogram/ })).toBeNull()
  })

  it('says where it could not be worked out', async () => {
    await open()
    await eventually(() => expect(asked).toHaveLength(1))
    await act(async () => asked[0]?.fail(new ComputeError('stopped', 'the work stopped.')))
    expect((await screen.findByText('could not be drawn')).title).toBe('the work stopped.')
  })
})
