import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest'
import { type AudioDecoder, decodeFile, decodeFileAtRate } from '../../src/files/decode'
import { decodeLimitMs } from '../../src/files/limits'
import { openFile } from '../../src/files/open-file'
import { encodeWav } from '../../src/files/wav/wav-writer'
import { flacHead } from './flac-bytes'

/** Never answers: one engine was seen to leave a file it could not decode pending for good. */
const hangs: AudioDecoder = () => new Promise(() => undefined)

const RATE = 48_000
const SECOND = new File([flacHead({ sampleRate: RATE, channels: 1, bits: 16, frames: RATE })], 'Take 3.flac')

/** What became of a promise so far. */
function outcomeOf(promise: Promise<unknown>): { readonly error: () => unknown } {
  let error: unknown = null
  promise.catch((reason: unknown) => {
    error = reason
  })
  return { error: () => error }
}

beforeEach(() => {
  vi.useFakeTimers()
})
afterEach(() => {
  vi.useRealTimers()
})

describe('a decoder that never answers', () => {
  it('is given up after its limit, with words that say what to do', async () => {
    const { error } = outcomeOf(decodeFile(SECOND, { open: openFile, decodeAudio: hangs }))
    await vi.advanceTimersByTimeAsync(decodeLimitMs(1) - 1)
    expect(error()).toBeNull()
    await vi.advanceTimersByTimeAsync(1)
    expect(error()).toMatchObject({
      name: 'FileError',
      code: 'too-slow',
      fileName: 'Take 3.flac',
      message: expect.stringMatching(/FLAC .*\. .*as WAV/),
    })
  })

  it('is given more time for longer sound, and for large files of unknown length', async () => {
    expect(decodeLimitMs(3600)).toBeGreaterThan(decodeLimitMs(1) + 60_000)
    const head = flacHead({ sampleRate: RATE, channels: 1, bits: 16, frames: 0 })
    const large = new File([head, new Uint8Array(8_000_000)], 'Take 4.flac')
    const { error } = outcomeOf(decodeFile(large, { open: openFile, decodeAudio: hangs }))
    await vi.advanceTimersByTimeAsync(decodeLimitMs(1))
    expect(error()).toBeNull()
    await vi.advanceTimersByTimeAsync(decodeLimitMs(8_000_000))
    expect(error()).toMatchObject({ code: 'too-slow' })
  })

  it('can be stopped before that', async () => {
    const stop = new AbortController()
    const options = { open: openFile, decodeAudio: hangs, signal: stop.signal }
    const { error } = outcomeOf(decodeFile(SECOND, options))
    await vi.advanceTimersByTimeAsync(10)
    stop.abort()
    await vi.advanceTimersByTimeAsync(0)
    expect(error()).toMatchObject({ name: 'AbortError' })
  })

  it('is given up when it resamples a backing, too', async () => {
    const { bytes } = encodeWav({ sampleRate: 8000, channels: [new Float32Array(8000)] }, 'pcm16')
    const backing = decodeFileAtRate(new File([bytes], 'Band.wav'), RATE, {
      open: openFile,
      decodeAudio: hangs,
    })
    const { error } = outcomeOf(backing)
    await vi.advanceTimersByTimeAsync(decodeLimitMs(1))
    expect(error()).toMatchObject({ code: 'too-slow', fileName: 'Band.wav' })
  })
})

it('leaves no timer behind a decoder that answers', async () => {
  const decodeAudio: AudioDecoder = async (_, sampleRate) => ({
    sampleRate,
    numberOfChannels: 1,
    getChannelData: () => new Float32Array(RATE),
  })
  await decodeFile(SECOND, { open: openFile, decodeAudio })
  expect(vi.getTimerCount()).toBe(0)
})
