import { describe, expect, it } from 'vitest'
import type { Sound } from '../../src/core/sound/sound'
import { type AudioDecoder, decodeFile, decodeFileAtRate } from '../../src/files/decode'
import { FileError } from '../../src/files/file-error'
import { openFile } from '../../src/files/open-file'
import { readWav } from '../../src/files/wav/wav-reader'
import { encodeWav } from '../../src/files/wav/wav-writer'
import { flacHead } from './flac-bytes'
import { ascii, type Bytes, bytesOf, chunk, fmt, riff } from './wav-bytes'

const fileOf = (bytes: Bytes, name = 'Take 3.wav') => new File([bytes], name)
const audioOf = (sound: Sound) => ({
  sampleRate: sound.sampleRate,
  numberOfChannels: sound.channels.length,
  getChannelData: (channel: number) => sound.channels[channel] ?? new Float32Array(0),
})

/** Like a browser's decoder: takes the bytes away first, then decodes, at the rate asked for. */
const decodes: AudioDecoder = async (bytes, sampleRate) => {
  const { sound } = readWav(new Uint8Array(structuredClone(bytes, { transfer: [bytes] })), 'x')
  return audioOf({ sampleRate, channels: sound.channels })
}
const refuses: AudioDecoder = async (bytes) => {
  structuredClone(bytes, { transfer: [bytes] })
  throw new DOMException('Unable to decode audio data', 'EncodingError')
}
const gives =
  (...channels: Float32Array[]): AudioDecoder =>
  async (_, sampleRate) =>
    audioOf({ sampleRate, channels })
const neverCalled: AudioDecoder = () => {
  throw new Error('the file should have been refused before decoding')
}

const refusal = async (bytes: Bytes, decodeAudio: AudioDecoder, mostBytes?: number) => {
  const options =
    mostBytes === undefined ? { open: openFile, decodeAudio } : { open: openFile, decodeAudio, mostBytes }
  const outcome: unknown = await decodeFile(fileOf(bytes), options).catch((error: unknown) => error)
  expect(outcome).toBeInstanceOf(FileError)
  return outcome
}

describe('taking a file in', () => {
  it('reads WAV itself: the samples of the file, at the rate of the file, whatever the browser makes of them', async () => {
    const channels = [Float32Array.of(0.5, -1, 0.25), Float32Array.of(0, 0.125, -0.5)]
    for (const sampleRate of [8000, 44100, 192000]) {
      const { bytes } = encodeWav({ sampleRate, channels }, 'pcm16')
      const take = await decodeFile(fileOf(bytes), { open: openFile, decodeAudio: neverCalled })
      expect(take).toMatchObject({
        name: 'Take 3.wav',
        replacedSamples: 0,
        header: { bitsPerSample: 16, sampleRate },
      })
      expect(take.sound).toEqual({ sampleRate, channels })
    }
  })

  it('reads 64-bit float, which browsers refuse', async () => {
    const file = riff(fmt({ tag: 3, bits: 64 }), chunk('data', bytesOf(Float64Array.of(0.5, -0.25))))
    const take = await decodeFile(fileOf(file), { open: openFile, decodeAudio: neverCalled })
    expect(take.sound.channels).toEqual([Float32Array.of(0.5, -0.25)])
  })

  it('asks the browser for the rate of the file in every other case', async () => {
    const file = flacHead({ sampleRate: 96000, channels: 1, bits: 24, frames: 3 })
    const samples = Float32Array.of(0.1, 0.2, 0.3)
    const take = await decodeFile(fileOf(file, 'Take 3.flac'), {
      open: openFile,
      decodeAudio: gives(samples),
    })
    expect(take).toMatchObject({ name: 'Take 3.flac', sound: { sampleRate: 96000, channels: [samples] } })
  })

  it('undoes the scale that a browser gives to the positive samples of 16 bits', async () => {
    const every = Int32Array.from({ length: 65536 }, (_, i) => i - 32768)
    const exact = Float32Array.from(every, (step) => step / 32768)
    const scaled = Float32Array.from(every, (step) => step / (step > 0 ? 32767 : 32768))
    const file = fileOf(flacHead({ sampleRate: 44100, channels: 1, bits: 16, frames: every.length }))
    for (const decoded of [exact, scaled]) {
      const take = await decodeFile(file, { open: openFile, decodeAudio: gives(decoded.slice()) })
      expect(take.sound.channels).toEqual([exact])
    }
    const top = fileOf(flacHead({ sampleRate: 44100, channels: 1, bits: 16, frames: 2 }))
    const take = await decodeFile(top, { open: openFile, decodeAudio: gives(Float32Array.of(1, -1)) })
    expect(take.sound.channels).toEqual([Float32Array.of(32767 / 32768, -1)])
  })

  it('leaves sound on neither scale, and sound of more bits, as decoded', async () => {
    const between = Float32Array.of(0.1, 0.7, -0.3)
    const sixteen = fileOf(flacHead({ sampleRate: 44100, channels: 1, bits: 16, frames: 3 }))
    expect(
      (await decodeFile(sixteen, { open: openFile, decodeAudio: gives(between.slice()) })).sound.channels,
    ).toEqual([between])
    const scaled = Float32Array.of(20000 / 32767, -0.5, 0)
    const more = fileOf(flacHead({ sampleRate: 44100, channels: 1, bits: 24, frames: 3 }))
    expect(
      (await decodeFile(more, { open: openFile, decodeAudio: gives(scaled.slice()) })).sound.channels,
    ).toEqual([scaled])
  })

  it('silences NaN, infinities and absurd values, and counts them', async () => {
    const samples = new Float32Array(1000).fill(0.5)
    samples.set([NaN, Infinity, -Infinity, 1e30, -20])
    const file = riff(fmt({ tag: 3, bits: 32 }), chunk('data', bytesOf(samples)))
    const { sound, replacedSamples } = await decodeFile(fileOf(file), {
      open: openFile,
      decodeAudio: decodes,
    })
    expect(replacedSamples).toBe(4)
    expect([...(sound.channels[0]?.subarray(0, 6) ?? [])]).toEqual([0, 0, 0, 0, -20, 0.5])
  })
})

describe('what is refused', () => {
  const one = new Uint8Array(2)

  it.each<[string, Bytes, string]>([
    ['a text named .wav', ascii('Dear all, here is the take you asked for. '.repeat(9)), 'not-audio'],
    ['an empty file', new Uint8Array(0), 'empty'],
    ['a truncated WAV', riff(fmt(), chunk('data', new Uint8Array(900))).subarray(0, 500), 'truncated'],
    ['a WAV of no frames', riff(fmt(), chunk('data', new Uint8Array(0))), 'no-frames'],
    ['six channels', riff(fmt({ channels: 6 }), chunk('data', new Uint8Array(12))), 'unsupported'],
    ['a rate too low', riff(fmt({ sampleRate: 7999 }), chunk('data', one)), 'unsupported'],
    ['a rate too high', riff(fmt({ sampleRate: 192001 }), chunk('data', one)), 'unsupported'],
  ])('%s, before the browser sees it', async (_, bytes, code) => {
    expect(await refusal(bytes, neverCalled)).toMatchObject({ code })
  })

  it('what would not fit in memory, before decoding, saying how much there is and how much fits', async () => {
    const minute = riff(fmt({ sampleRate: 8000 }), chunk('data', new Uint8Array(60 * 8000 * 2)))
    const bytes = 60 * 8000 * 4
    const error = await refusal(minute, neverCalled, bytes / 2)
    expect(error).toMatchObject({
      code: 'too-long',
      message: expect.stringMatching(/1\.0 minutes.* 0\.5 fit/),
    })
    await expect(
      decodeFile(fileOf(minute), { open: openFile, decodeAudio: decodes, mostBytes: bytes }),
    ).resolves.toBeDefined()
  })

  it('a FLAC that the browser cannot decode, naming container and coding but not the words of the browser', async () => {
    const error = await refusal(flacHead({ sampleRate: 44100, channels: 1, bits: 16, frames: 9 }), refuses)
    expect(error).toMatchObject({
      code: 'unsupported',
      message: expect.stringMatching(/FLAC with FLAC sound/),
    })
    expect(error).toMatchObject({ message: expect.not.stringMatching(/Unable/) })
  })

  it('a FLAC that holds less than its header promises', async () => {
    const bytes = flacHead({ sampleRate: 44100, channels: 1, bits: 16, frames: 44100 })
    const error = await refusal(bytes, gives(new Float32Array(22050)))
    expect(error).toMatchObject({ code: 'truncated', message: expect.stringMatching(/1\.00 s.*0\.50 s/) })
  })

  it('a decoder that gives nothing, or more channels than announced', async () => {
    const flac = flacHead({ sampleRate: 44100, channels: 1, bits: 16, frames: 0 })
    expect(await refusal(flac, gives(new Float32Array(0)))).toMatchObject({ code: 'no-frames' })
    const three = gives(new Float32Array(9), new Float32Array(9), new Float32Array(9))
    expect(await refusal(flac, three)).toMatchObject({ code: 'unsupported' })
  })

  it('floats that are integers in disguise', async () => {
    const samples = Float32Array.from({ length: 1000 }, (_, i) => 32767 * Math.sin(i))
    const file = riff(fmt({ tag: 3, bits: 32 }), chunk('data', bytesOf(samples)))
    expect(await refusal(file, decodes)).toMatchObject({ code: 'damaged' })
  })
})

describe('bringing a backing to the rate of the take', () => {
  const channels = [new Float32Array(1000).fill(0.5)]

  it('leaves a file alone that has the rate', async () => {
    const { bytes } = encodeWav({ sampleRate: 48000, channels }, 'pcm16')
    const take = await decodeFileAtRate(fileOf(bytes), 48000, { open: openFile, decodeAudio: neverCalled })
    expect(take.sound.channels).toEqual(channels)
  })

  it('lets the browser resample the cleaned sound', async () => {
    const spoiled = new Float32Array(1000).fill(0.5)
    spoiled[7] = NaN
    const file = riff(fmt({ tag: 3, bits: 32, sampleRate: 44100 }), chunk('data', bytesOf(spoiled)))
    const rates: number[] = []
    const noting: AudioDecoder = async (data, rate) => {
      rates.push(rate)
      return decodes(data, rate)
    }
    const take = await decodeFileAtRate(fileOf(file), 96000, { open: openFile, decodeAudio: noting })
    expect(rates).toEqual([96000])
    expect(take.replacedSamples).toBe(1)
    expect(take.sound.sampleRate).toBe(96000)
    expect(take.sound.channels[0]?.[7]).toBe(0)
  })

  it('refuses what would not fit in memory at the new rate', async () => {
    const { bytes } = encodeWav({ sampleRate: 8000, channels }, 'pcm16')
    const options = { open: openFile, decodeAudio: decodes, mostBytes: 8000 }
    await expect(decodeFileAtRate(fileOf(bytes), 192000, options)).rejects.toMatchObject({ code: 'too-long' })
  })

  it('says so when the browser cannot resample', async () => {
    const { bytes } = encodeWav({ sampleRate: 8000, channels }, 'pcm16')
    const options = { open: openFile, decodeAudio: refuses }
    await expect(decodeFileAtRate(fileOf(bytes), 11025, options)).rejects.toMatchObject({
      code: 'unsupported',
    })
  })
})
