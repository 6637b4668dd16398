import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type CodedSpan, doubtOf, soundSpan } from '../../../src/files/coded/coded-span'
import { readM4aSpan, readMovie } from '../../../src/files/coded/m4a-span'
import { mp3FrameOffset, readMp3Span } from '../../../src/files/coded/mp3-span'

const take = (name: string) =>
  new Uint8Array(readFileSync(new URL(`../../../e2e/takes/${name}`, import.meta.url)))

/** One second of sound at 48 kHz, encoded by a general-purpose encoder. */
const mp3 = take('second.mp3')
const m4a = take('second.m4a')

const mp3Span: CodedSpan = {
  codedFrames: 43 * 1152,
  packetFrames: 1152,
  delayFrames: 576,
  decoderDelayFrames: 529,
  frames: 48_000,
  toleranceFrames: 0,
}
const m4aSpan: CodedSpan = {
  codedFrames: 48 * 1024,
  packetFrames: 1024,
  delayFrames: 1024,
  decoderDelayFrames: 0,
  frames: 48_000,
  toleranceFrames: 1,
}

describe('the tag of an MP3 file', () => {
  it('states where the sound lies', () => {
    expect(readMp3Span(mp3.subarray(mp3FrameOffset(mp3)))).toEqual(mp3Span)
  })

  it('is found behind an ID3 tag of any length, with a footer too', () => {
    const id3 = (flags: number) => Uint8Array.of(0x49, 0x44, 0x33, 4, 0, flags, 0, 0, 0x02, 0x01)
    expect(mp3FrameOffset(id3(0))).toBe(10 + 257)
    expect(mp3FrameOffset(id3(0x10))).toBe(10 + 257 + 10)
    expect(mp3FrameOffset(Uint8Array.of(0xff, 0xfb))).toBe(0)
  })

  it('is not believed where it is cut off, is not one, or names an encoder that does not state its delay', () => {
    const frame = mp3.slice(mp3FrameOffset(mp3))
    for (let length = 0; length < 180; length++) {
      const cut = readMp3Span(frame.subarray(0, length))
      expect(cut === null || cut.frames === 48_000).toBe(true)
    }
    const lettersAt = (at: number) => String.fromCharCode(...frame.subarray(at, at + 4))
    expect([lettersAt(21), lettersAt(141)]).toEqual(['Info', 'Lavf'])
    for (const at of [0, 21, 141])
      expect(readMp3Span(frame.map((byte, i) => (i === at ? 0 : byte)))).toBeNull()
  })
})

describe('the edit list of an M4A file', () => {
  it('states where the sound lies', async () => {
    const movie = await readMovie(new Blob([m4a]))
    expect(movie && readM4aSpan(movie, 48_000)).toEqual(m4aSpan)
  })

  it('goes by its own length where the table of times counts whole packets', async () => {
    const table = m4a.slice()
    // The last packet of 896 frames becomes one of 1024.
    new DataView(table.buffer).setUint32(indexOf(table, 'stts') + 4 + 8 + 8 + 4, 1024)
    const movie = await readMovie(new Blob([table]))
    expect(movie && readM4aSpan(movie, 48_000)).toEqual({ ...m4aSpan, toleranceFrames: 48 })
  })

  it('is not believed where it is missing, or more than a plain beginning and end', async () => {
    const changed = async (change: (bytes: Uint8Array<ArrayBuffer>, elst: number) => void) => {
      const bytes = m4a.slice()
      change(bytes, indexOf(bytes, 'elst'))
      const movie = await readMovie(new Blob([bytes]))
      return movie && readM4aSpan(movie, 48_000)
    }
    expect(await changed((bytes, elst) => bytes.fill(0x20, elst, elst + 4))).toBeNull()
    // Two entries; a pause ahead of the sound; twice the speed.
    expect(await changed((bytes, elst) => bytes.fill(2, elst + 11, elst + 12))).toBeNull()
    expect(await changed((bytes, elst) => bytes.fill(0xff, elst + 16, elst + 20))).toBeNull()
    expect(await changed((bytes, elst) => bytes.fill(2, elst + 21, elst + 22))).toBeNull()
  })

  it('makes no trouble wherever the file is cut', async () => {
    for (let length = 0; length < m4a.length; length += 7) {
      const movie = await readMovie(new Blob([m4a.subarray(0, length)]))
      expect(movie && readM4aSpan(movie, 48_000)).not.toBeUndefined()
    }
  })
})

/** Where the four letters of a box stand. */
function indexOf(bytes: Uint8Array, type: string): number {
  return Buffer.from(bytes).indexOf(type)
}

describe('finding the sound in what a decoder puts out', () => {
  // Counts that the engines gave for these files.
  it.each([
    ['Chromium', 48_000, 0],
    ['Firefox', 49_007, 576],
    ['WebKit', 49_536, 1105],
  ])('MP3 in %s: of %d frames it begins at %d', (_, decoded, from) => {
    expect(soundSpan(decoded, mp3Span)).toEqual({ from, to: from + 48_000 })
  })

  it('MP3 where the tag was decoded as well, and where only the front was cut', () => {
    expect(soundSpan(49_536 + 1152, mp3Span)).toEqual({ from: 1105 + 1152, to: 1105 + 1152 + 48_000 })
    expect(soundSpan(49_536 - 1105, mp3Span)).toEqual({ from: 0, to: 48_000 })
  })

  it('MP3 of 22.05 kHz, whose packets are half as long, as WebKit gave it', () => {
    const span = { ...mp3Span, codedFrames: 57 * 576, packetFrames: 576, frames: 31_488 }
    expect(soundSpan(32_832, span)).toEqual({ from: 1105, to: 1105 + 31_488 })
  })

  it.each([
    ['as Chromium and Firefox gave it', 48_000, 0, 48_000],
    ['a frame short, as Chromium gave another', 47_999, 0, 47_999],
    ['all packets', 49_152, 1024, 49_024],
    ['all packets but the priming', 48_128, 0, 48_000],
    ['priming left, end cut', 49_024, 1024, 49_024],
  ])('M4A %s', (_, decoded, from, to) => {
    expect(soundSpan(decoded, m4aSpan)).toEqual({ from, to })
  })

  it('says where it cannot tell, and how late the sound may be and how much is missing', () => {
    // WebKit left out the end of this one.
    expect(soundSpan(47_104, m4aSpan)).toBeNull()
    const doubt = doubtOf(47_104, m4aSpan, 48_000)
    expect(doubt.mostLateMs).toBeCloseTo(21.33, 2)
    expect(doubt.missingMs).toBeCloseTo(18.67, 2)
    expect(soundSpan(48_500, mp3Span)).toBeNull()
    expect(doubtOf(48_500, mp3Span, 48_000).missingMs).toBe(0)
    expect(doubtOf(48_500, mp3Span, 48_000).mostLateMs).toBeCloseTo((1000 * 2257) / 48_000, 6)
  })

  it('says so where two ways of decoding come to the same number', () => {
    // All packets less the decoder's delay are as many frames here as the sound with both delays ahead of it.
    const span = { ...mp3Span, codedFrames: 48_000 + 576 + 2 * 529 }
    expect(soundSpan(48_000 + 576 + 529, span)).toBeNull()
  })
})
