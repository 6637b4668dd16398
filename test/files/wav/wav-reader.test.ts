import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { FileError } from '../../../src/files/file-error'
import { readWav } from '../../../src/files/wav/wav-reader'
import { encodeWav } from '../../../src/files/wav/wav-writer'
import { ascii, bytesOf, chunk, concat, fmt, fromHex, littleEndian, riff } from '../wav-bytes'

const samplesOf = (bytes: Uint8Array) =>
  readWav(bytes, 'take.wav').sound.channels.map((channel) => [...channel])

describe('files of every integer and float width', () => {
  it('8 bits are unsigned, silence at 128 (file written by the wave module of Python 3)', () => {
    const file = fromHex(`52494646 28000000 57415645 666d7420 10000000 0100 0200 401f0000 803e0000 0200 0800
      64617461 04000000 80ff0080`)
    expect(samplesOf(file)).toEqual([
      [0, -1],
      [127 / 128, 0],
    ])
  })

  it('32 bits are signed (file written by the wave module of Python 3)', () => {
    const file = fromHex(`52494646 30000000 57415645 666d7420 10000000 0100 0100 00770100 00dc0500 0400 2000
      64617461 0c000000 00000080 ffffff7f 00000040`)
    expect(samplesOf(file)).toEqual([[-1, 1, 0.5]])
    expect(readWav(file, 'take.wav').facts).toMatchObject({ sampleRate: 96000, bitsPerSample: 32, frames: 3 })
  })

  it('24 bits, in a plain header too', () => {
    const data = fromHex('000080 ffffff 000040')
    expect(samplesOf(riff(fmt({ bits: 24 }), chunk('data', data)))).toEqual([[-1, -1 / 2 ** 23, 0.5]])
  })

  it('32- and 64-bit float, values above full scale, NaN and infinities as they stand', () => {
    const values = [0.1, -3, NaN, Infinity]
    const short = riff(fmt({ tag: 3, bits: 32 }), chunk('data', bytesOf(Float32Array.from(values))))
    const long = riff(fmt({ tag: 3, bits: 64 }), chunk('data', bytesOf(Float64Array.from(values))))
    const expected = [[...Float32Array.from(values)]]
    expect(samplesOf(short)).toEqual(expected)
    expect(samplesOf(long)).toEqual(expected)
  })

  it('20 bits left-justified in three bytes', () => {
    const file = riff(fmt({ bits: 20, blockAlign: 3 }), chunk('data', fromHex('000040')))
    expect(samplesOf(file)).toEqual([[0.5]])
    expect(readWav(file, 'take.wav').facts).toMatchObject({ bitsPerSample: 20, bytesPerSample: 3 })
  })
})

describe('unusual frames', () => {
  const data = chunk('data', bytesOf(Int16Array.of(16384, -16384)))
  const expected = [[0.5, -0.5]]

  it('skips chunks before the data, odd ones with their pad, and ignores what follows', () => {
    const odd = chunk('LIST', ascii('abc'))
    expect(samplesOf(riff(chunk('JUNK', new Uint8Array(28)), odd, fmt(), odd, data, odd))).toEqual(expected)
  })

  it('a data size never filled in means: to the end of the file', () => {
    const file = riff(fmt(), chunk('data', bytesOf(Int16Array.of(16384, -16384)), 0xffffffff))
    expect(samplesOf(file)).toEqual(expected)
  })

  it.each(['RF64', 'BW64'])(
    '%s: the size of the data stands in ds64 (EBU Tech 3306, ITU-R BS.2088)',
    (id) => {
      const sizes = concat(littleEndian(0, 8), littleEndian(4, 8), littleEndian(2, 8), littleEndian(0, 4))
      const body = concat(
        chunk('ds64', sizes),
        fmt(),
        chunk('data', bytesOf(Int16Array.of(16384, -16384, 9)), 0xffffffff),
      )
      expect(samplesOf(concat(ascii(id), littleEndian(0xffffffff, 4), ascii('WAVE'), body))).toEqual(expected)
    },
  )

  it('drops the rest of a frame that is not whole', () => {
    const bytes = new Uint8Array([0, 64, 0, 192, 1])
    expect(samplesOf(riff(fmt(), chunk('data', bytes)))).toEqual(expected)
  })

  it('reads a file that begins in the middle of a buffer', () => {
    const padded = concat(ascii('abc'), riff(fmt(), data))
    expect(samplesOf(padded.subarray(3))).toEqual(expected)
  })
})

describe('files that cannot be read', () => {
  const errorOf = (bytes: Uint8Array): FileError => {
    try {
      readWav(bytes, 'Take 3.wav')
    } catch (error) {
      if (error instanceof FileError) return error
      throw error
    }
    throw new Error('the file was read')
  }
  const second = bytesOf(new Int16Array(48000))

  it('names how much a truncated file promises and how much is there', () => {
    const error = errorOf(riff(fmt(), chunk('data', second)).subarray(0, 44 + 24000))
    expect(error).toMatchObject({ code: 'truncated', fileName: 'Take 3.wav' })
    expect(error.message).toMatch(/“\u2068Take 3.wav\u2069” is cut short.*1\.00 s.*0\.25 s is there\. \w+/)
  })

  it('one missing byte is enough, a missing pad byte is not', () => {
    expect(errorOf(riff(fmt(), chunk('data', second)).subarray(0, -1)).code).toBe('truncated')
    const odd = riff(fmt({ bits: 24 }), chunk('data', new Uint8Array(3)))
    expect(samplesOf(odd.subarray(0, -1))).toEqual([[0]])
  })

  it.each([
    ['text under the name of a WAV', ascii('Dear all, here is the take you asked for.'), 'not-audio'],
    ['nothing', new Uint8Array(0), 'not-audio'],
    ['RIFF of another kind', concat(ascii('RIFF'), littleEndian(4, 4), ascii('AVI ')), 'not-audio'],
    ['a header alone', riff(fmt()), 'no-frames'],
    ['an empty data chunk', riff(fmt(), chunk('data', new Uint8Array(0))), 'no-frames'],
    ['less than one frame', riff(fmt({ channels: 2 }), chunk('data', new Uint8Array(2))), 'no-frames'],
    ['a header cut off', riff(fmt()).subarray(0, 30), 'truncated'],
    ['data before its format', riff(chunk('data', new Uint8Array(4)), fmt()), 'damaged'],
    ['no channels', riff(fmt({ channels: 0, blockAlign: 2 }), chunk('data', new Uint8Array(4))), 'damaged'],
    ['no rate', riff(fmt({ sampleRate: 0 }), chunk('data', new Uint8Array(4))), 'damaged'],
    ['frames of no bytes', riff(fmt({ bits: 0 }), chunk('data', new Uint8Array(4))), 'damaged'],
    [
      'a frame that is not its samples',
      riff(fmt({ blockAlign: 3 }), chunk('data', new Uint8Array(6))),
      'damaged',
    ],
    [
      'ADPCM',
      riff(fmt({ tag: 2, bits: 4, blockAlign: 1024 }), chunk('data', new Uint8Array(4))),
      'unsupported',
    ],
    ['another coding', riff(fmt({ tag: 0x55, bits: 0 }), chunk('data', new Uint8Array(4))), 'unsupported'],
  ])('%s: %#', (_, bytes, code) => {
    expect(errorOf(bytes).code).toBe(code)
  })

  it('any damage and any cut gives a sound or a FileError, nothing else', () => {
    const sizes = concat(littleEndian(0, 8), littleEndian(4, 8), littleEndian(2, 8), littleEndian(0, 4))
    const whole = [
      encodeWav({ sampleRate: 8000, channels: [new Float32Array(9), new Float32Array(9)] }, 'float32').bytes,
      riff(chunk('JUNK', ascii('abc')), fmt(), chunk('data', new Uint8Array(8))),
      concat(
        ascii('RF64'),
        littleEndian(0xffffffff, 4),
        ascii('WAVE'),
        chunk('ds64', sizes),
        fmt(),
        chunk('data', new Uint8Array(4), 0xffffffff),
      ),
    ]
    const hits = fc.array(fc.tuple(fc.nat(120), fc.integer({ min: 0, max: 255 })), { maxLength: 6 })
    fc.assert(
      fc.property(fc.constantFrom(...whole), hits, fc.nat(120), (file, changes, length) => {
        const bytes = file.slice(0, length)
        for (const [at, value] of changes) if (at < bytes.length) bytes[at] = value
        try {
          expect(readWav(bytes, 'x.wav').facts.frames).toBeGreaterThan(0)
        } catch (error) {
          expect(error).toBeInstanceOf(FileError)
        }
      }),
      { numRuns: 5000 },
    )
  })
})
