import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { BufferTarget, EncodedAudioPacketSource, EncodedPacket, Mp4OutputFormat, Output } from 'mediabunny'
import { describe, expect, it } from 'vitest'
import { FileError } from '../../src/files/file-error'
import { readHeader } from '../../src/files/header'
import { encodeWav } from '../../src/files/wav/wav-writer'
import { flacHead } from './flac-bytes'
import { ascii, type Bytes, chunk, concat, fmt, littleEndian, riff } from './wav-bytes'

const headerOf = (...parts: readonly Bytes[]) => readHeader(new Blob([...parts]), 'Take 3')
const refusal = async (...parts: readonly Bytes[]) => headerOf(...parts).catch((error: unknown) => error)

describe('WAV', () => {
  it('recordings found on the machine: one channel, 16 bits, 48 kHz, frames as their data chunk says', async () => {
    const folder = '/usr/share/sounds/alsa'
    const names = readdirSync(folder)
    expect(names.length).toBeGreaterThan(0)
    for (const name of names) {
      const file = readFileSync(`${folder}/${name}`)
      // Independent of the reader: the size field behind the word 'data', two bytes to the frame.
      const frames = file.readUInt32LE(file.indexOf('data') + 4) / 2
      expect(await readHeader(new Blob([file]), name)).toEqual({
        container: 'WAV',
        codec: 'PCM',
        sampleRate: 48000,
        channels: 1,
        bitsPerSample: 16,
        frames,
        durationSeconds: frames / 48000,
      })
    }
  })

  it('looks through the extensible header', async () => {
    const sound = { sampleRate: 96000, channels: [new Float32Array(96), new Float32Array(96)] }
    const header = await headerOf(encodeWav(sound, 'float32').bytes)
    expect(header).toMatchObject({
      codec: 'float',
      bitsPerSample: 32,
      channels: 2,
      frames: 96,
      durationSeconds: 0.001,
    })
  })

  it('finds the sound behind a picture of some megabytes', async () => {
    const picture = chunk('id3 ', new Uint8Array(3_000_001))
    const file = riff(picture, fmt(), chunk('data', new Uint8Array(96)))
    expect(await headerOf(file)).toMatchObject({ container: 'WAV', frames: 48 })
  })

  it('a coding that only a browser may know has no frames to count', async () => {
    const file = riff(fmt({ tag: 0x11, bits: 4, blockAlign: 512 }), chunk('data', new Uint8Array(512)))
    expect(await headerOf(file)).toMatchObject({ codec: 'unknown', frames: null, durationSeconds: null })
  })
})

describe('FLAC (STREAMINFO, RFC 9639 section 8.2)', () => {
  it('gives back any fields', async () => {
    const fields = fc.record({
      sampleRate: fc.integer({ min: 1, max: 655350 }),
      channels: fc.integer({ min: 1, max: 8 }),
      bits: fc.integer({ min: 4, max: 32 }),
      frames: fc.integer({ min: 1, max: 2 ** 36 - 1 }),
    })
    await fc.assert(
      fc.asyncProperty(fields, async (info) => {
        expect(await headerOf(flacHead(info))).toEqual({
          container: 'FLAC',
          codec: 'FLAC',
          sampleRate: info.sampleRate,
          channels: info.channels,
          bitsPerSample: info.bits,
          frames: info.frames,
          durationSeconds: info.frames / info.sampleRate,
        })
      }),
    )
  })

  it('a length of 0 means unknown', async () => {
    const head = flacHead({ sampleRate: 44100, channels: 2, bits: 24, frames: 0 })
    expect(await headerOf(head)).toMatchObject({ frames: null, durationSeconds: null })
  })

  it('is refused when cut in its header or without a rate', async () => {
    const info = { sampleRate: 44100, channels: 2, bits: 24, frames: 9 }
    expect(await refusal(flacHead(info).subarray(0, 30))).toMatchObject({ code: 'truncated' })
    expect(await refusal(flacHead({ ...info, sampleRate: 0 }))).toMatchObject({ code: 'damaged' })
  })
})

describe('compressed files', () => {
  it('MP3: 50 frames of 1152 samples at 44.1 kHz (ISO/IEC 11172-3, layer III frame header)', async () => {
    // Sync, MPEG-1 layer III, 128 kbit/s, 44.1 kHz, stereo: 144 * 128000 / 44100 = 417 bytes to the frame.
    const frame = concat(new Uint8Array([0xff, 0xfb, 0x90, 0x04]), new Uint8Array(413))
    const header = await headerOf(...Array.from({ length: 50 }, () => frame))
    expect(header).toMatchObject({
      container: 'MP3',
      codec: 'MP3',
      sampleRate: 44100,
      channels: 2,
      frames: null,
    })
    expect(header.durationSeconds).toBeCloseTo((50 * 1152) / 44100, 6)
  })

  it('M4A: rate and channels of the AAC in it', async () => {
    const target = new BufferTarget()
    const output = new Output({ format: new Mp4OutputFormat(), target })
    const source = new EncodedAudioPacketSource('aac')
    output.addAudioTrack(source)
    await output.start()
    // AudioSpecificConfig of ISO/IEC 14496-3: AAC-LC, 44.1 kHz, one channel.
    const description = new Uint8Array([0x12, 0x08])
    const decoderConfig = { codec: 'mp4a.40.2', sampleRate: 44100, numberOfChannels: 1, description }
    for (let i = 0; i < 10; i++) {
      const packet = new EncodedPacket(new Uint8Array(64), 'key', (i * 1024) / 44100, 1024 / 44100)
      await source.add(packet, { decoderConfig })
    }
    await output.finalize()
    const header = await headerOf(new Uint8Array(target.buffer ?? new ArrayBuffer(0)))
    expect(header).toMatchObject({ container: 'M4A', codec: 'AAC', sampleRate: 44100, channels: 1 })
    expect(header.durationSeconds).toBeCloseTo(10240 / 44100, 3)
  })

  it('OGG: channels of the Opus identification header, and always 48 kHz (RFC 7845, section 5.1)', async () => {
    // Version 1, two channels, no pre-skip, recorded at 16 kHz, no gain, mapping family 0.
    const head = concat(
      ascii('OpusHead'),
      new Uint8Array([1, 2, 0, 0]),
      littleEndian(16000, 4),
      new Uint8Array(3),
    )
    const tags = concat(ascii('OpusTags'), littleEndian(0, 8))
    // Configuration 31, stereo, one frame: 20 ms of sound (RFC 6716, section 3.1).
    const packet = new Uint8Array([0xfc, 0xff, 0xfe])
    const header = await headerOf(oggPage(2, 0, head), oggPage(0, 1, tags), oggPage(4, 2, packet, 960))
    expect(header).toMatchObject({ container: 'OGG', codec: 'Opus', sampleRate: 48000, channels: 2 })
    expect(header.durationSeconds).toBeCloseTo(0.02, 6)
  })
})

describe('what is refused, and in which words', () => {
  it.each<[string, Bytes, string, RegExp]>([
    ['an empty file', new Uint8Array(0), 'empty', /“\u2068Take 3\u2069” is empty\. /],
    [
      'a text',
      ascii('Dear all, here is the take. '.repeat(99)),
      'not-audio',
      /not a sound file.*\. Open a WAV/,
    ],
    [
      'a cut WAV',
      riff(fmt(), chunk('data', new Uint8Array(96_000))).subarray(0, 48_044),
      'truncated',
      /1\.00 s.*0\.50 s/,
    ],
    [
      'a WAV of no frames',
      riff(fmt(), chunk('data', new Uint8Array(0))),
      'no-frames',
      /no sound in it\. Export/,
    ],
    [
      'an AIFF file',
      concat(ascii('FORM'), littleEndian(0, 4), ascii('AIFF')),
      'unsupported',
      /an AIFF file.*Export/,
    ],
  ])('%s', async (_, bytes, code, message) => {
    const error = await refusal(bytes)
    expect(error).toBeInstanceOf(FileError)
    expect(error).toMatchObject({ code, fileName: 'Take 3', message: expect.stringMatching(message) })
  })

  it('a file that has gone since it was chosen', async () => {
    const gone = new Blob(['RIFF'])
    const failing = () => Promise.reject(new DOMException('', 'NotReadableError'))
    Object.defineProperty(gone, 'slice', { value: () => ({ arrayBuffer: failing }) })
    await expect(readHeader(gone, 'Take 3')).rejects.toMatchObject({ code: 'unreadable' })
  })

  it('never shows the words of a library, whatever the bytes', async () => {
    const openings = [
      ascii('OggS'),
      ascii('ID3'),
      ascii('fLaC'),
      new Uint8Array([0xff, 0xfb, 0x90, 4]),
      ascii('RIFF'),
    ]
    const bytes = fc.tuple(fc.constantFrom(...openings), fc.uint8Array({ maxLength: 600 }))
    await fc.assert(
      fc.asyncProperty(bytes, async ([opening, rest]) => {
        const outcome = await refusal(opening, Uint8Array.from(rest))
        if (outcome instanceof Error) expect(outcome).toBeInstanceOf(FileError)
      }),
      { numRuns: 300 },
    )
  })
})

/** One OGG page (RFC 3533, section 6) holding `packet`, with its checksum. */
function oggPage(flags: number, sequence: number, packet: Bytes, granule = 0): Bytes {
  const page = concat(
    ascii('OggS'),
    new Uint8Array([0, flags]),
    littleEndian(granule, 8),
    littleEndian(1, 4),
    littleEndian(sequence, 4),
    littleEndian(0, 4),
    new Uint8Array([1, packet.length]),
    packet,
  )
  let crc = 0
  for (const byte of page) {
    crc = (crc ^ (byte << 24)) >>> 0
    for (let bit = 0; bit < 8; bit++) crc = (crc & 0x80000000 ? (crc << 1) ^ 0x04c11db7 : crc << 1) >>> 0
  }
  page.set(littleEndian(crc, 4), 22)
  return page
}
