import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { HEADER_LIMIT_MS } from '../../src/files/limits'
import type { FileAnswer } from '../../src/files/open-file'
import { openInWorker } from '../../src/files/open-in-worker'

/** A worker that says what the test has it say. */
class FakeWorker {
  static last: FakeWorker
  ended = false
  onmessage: (event: { data: FileAnswer }) => void = () => undefined
  onerror: (event: { message: string }) => void = () => undefined

  constructor() {
    FakeWorker.last = this
  }

  postMessage(): void {}

  terminate(): void {
    this.ended = true
  }

  answer(data: FileAnswer): void {
    this.onmessage({ data })
  }
}

const take = new File(['x'], 'Take 3.m4a')
const opened = {
  header: {
    container: 'WAV',
    codec: 'PCM',
    sampleRate: 48000,
    channels: 1,
    bitsPerSample: 16,
    frames: 1,
    durationSeconds: 1 / 48000,
  },
  sound: { sampleRate: 48000, channels: [Float32Array.of(0.5)] },
  replacedSamples: 0,
} as const

beforeEach(() => {
  vi.useFakeTimers()
  vi.stubGlobal('Worker', FakeWorker)
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

describe('opening a file in a worker', () => {
  it('gives what the worker gives, and ends it', async () => {
    const opening = openInWorker(take, {})
    FakeWorker.last.answer({ type: 'header' })
    FakeWorker.last.answer({ type: 'opened', opened })
    expect(await opening).toEqual(opened)
    expect(FakeWorker.last.ended).toBe(true)
  })

  it('ends a header that takes too long, and says so', async () => {
    const opening = openInWorker(take, {})
    const refused = expect(opening).rejects.toMatchObject({ name: 'FileError', code: 'too-slow' })
    vi.advanceTimersByTime(HEADER_LIMIT_MS - 1)
    expect(FakeWorker.last.ended).toBe(false)
    vi.advanceTimersByTime(1)
    expect(FakeWorker.last.ended).toBe(true)
    await refused
  })

  it('lets a long file with a good header take its time', async () => {
    const opening = openInWorker(take, {})
    FakeWorker.last.answer({ type: 'header' })
    vi.advanceTimersByTime(10 * HEADER_LIMIT_MS)
    expect(FakeWorker.last.ended).toBe(false)
    FakeWorker.last.answer({ type: 'opened', opened })
    await expect(opening).resolves.toEqual(opened)
  })

  it('puts a refusal together again, with the name of the file', async () => {
    const opening = openInWorker(take, {})
    FakeWorker.last.answer({ type: 'failed', code: 'empty', problem: 'is empty', advice: 'Export it again.' })
    await expect(opening).rejects.toMatchObject({
      name: 'FileError',
      code: 'empty',
      message: '“\u2068Take 3.m4a\u2069” is empty. Export it again.',
    })
    expect(FakeWorker.last.ended).toBe(true)
  })

  it('is ended in the middle when it is given up', async () => {
    const giveUp = new AbortController()
    const opening = openInWorker(take, { signal: giveUp.signal })
    const refused = expect(opening).rejects.toMatchObject({ name: 'AbortError' })
    giveUp.abort()
    expect(FakeWorker.last.ended).toBe(true)
    await refused
  })

  it('does not begin what has been given up', async () => {
    await expect(openInWorker(take, { signal: AbortSignal.abort() })).rejects.toMatchObject({
      name: 'AbortError',
    })
  })
})
