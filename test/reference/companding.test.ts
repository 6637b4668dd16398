import { describe, expect, it } from 'vitest'
import { readWav } from '../../src/files/wav/wav-reader'
import { bytesOf, chunk, fmt, riff } from '../files/wav-bytes'

/*
 * ITU-T G.711 (11/1988) gives, for each half of the range, decision values x(n) in tables 1a/1b (A-law) and 2a/2b
 * (mu-law). A decoder puts out the middle between two of them, y(n). Here the tables are built up from the length of
 * the intervals in each segment; the reader expands by the bits of the code instead.
 */

interface Segment {
  readonly intervals: number
  readonly step: number
}

/** Middles of the intervals from zero up. */
function middles(segments: readonly Segment[]): number[] {
  let x = 0
  return segments.flatMap(({ intervals, step }) =>
    Array.from({ length: intervals }, () => {
      x += step
      return x - step / 2
    }),
  )
}

const doubling = (first: number, count: number): Segment[] =>
  Array.from({ length: count }, (_, i) => ({ intervals: 16, step: first * 2 ** i }))

/** Table 1: 32 intervals of 2, then six times 16 of twice the length; it ends at 4096. */
const A_LAW = middles([{ intervals: 32, step: 2 }, ...doubling(4, 6)])
/** Table 2: one interval of 1, whose output is 0, 15 of 2, then seven times 16 of twice the length; it ends at 8159. */
const MU_LAW = middles([{ intervals: 1, step: 1 }, { intervals: 15, step: 2 }, ...doubling(4, 7)]).with(0, 0)

/** What a WAV file with every code from 0 to 255 is read as. */
function everyCode(tag: number): readonly number[] {
  const codes = Uint8Array.from({ length: 256 }, (_, code) => code)
  const { sound } = readWav(riff(fmt({ tag, bits: 8 }), chunk('data', bytesOf(codes))), 'take.wav')
  return [...(sound.channels[0] ?? [])]
}

describe('ITU-T G.711 expansion', () => {
  it('A-law: 128 values each side, even bits of the code inverted, full scale 4096 (table 1a, 1b)', () => {
    expect(A_LAW.slice(0, 2)).toEqual([1, 3])
    expect(A_LAW.at(-1)).toBe(4032)
    const read = everyCode(6)
    A_LAW.forEach((y, n) => {
      expect(read[(0x80 | n) ^ 0x55]).toBe(y / 4096)
      expect(read[n ^ 0x55]).toBe(-y / 4096)
    })
  })

  it('mu-law: 128 values each side, every bit of the code inverted, full scale 8192 (table 2a, 2b)', () => {
    expect(MU_LAW.slice(0, 3)).toEqual([0, 2, 4])
    expect(MU_LAW.at(-1)).toBe(8031)
    const read = everyCode(7)
    MU_LAW.forEach((y, n) => {
      expect(read[0xff - n]).toBe(y / 8192)
      expect(read[0x7f - n]).toBeCloseTo(-y / 8192, 12)
    })
  })

  it('agrees with the audioop module of Python 3 on 16-bit values (ulaw2lin, alaw2lin)', () => {
    const steps = (tag: number, codes: readonly number[]) => {
      const read = everyCode(tag)
      return codes.map((code) => (read[code] ?? Number.NaN) * 32768)
    }
    const codes = [0x00, 0x01, 0x2a, 0x55, 0x7f, 0x80, 0xaa, 0xd5, 0xff]
    expect(steps(6, codes)).toEqual([-5504, -5248, -32256, -8, -848, 5504, 32256, 8, 848])
    expect(steps(7, codes).map((step) => step + 0)).toEqual([
      -32124, -31100, -5372, -716, 0, 32124, 5372, 716, 0,
    ])
  })
})
