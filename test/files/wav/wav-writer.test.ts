import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Sound } from '../../../src/core/sound/sound'
import { encodeWav } from '../../../src/files/wav/wav-writer'
import { fromHex, toHex } from '../wav-bytes'

const mono = (...samples: number[]): Sound => ({ sampleRate: 48000, channels: [Float32Array.from(samples)] })

describe('the bytes of a file, against what general tools write', () => {
  it('16-bit mono is what the wave module of Python 3 writes', () => {
    const golden = fromHex(`52494646 2a000000 57415645 666d7420 10000000 0100 0100 80bb0000 00770100 0200 1000
      64617461 06000000 0000 ff7f 0080`)
    const { bytes, clippedSamples } = encodeWav(mono(0, 32767 / 32768, -1), 'pcm16')
    expect(toHex(bytes)).toBe(toHex(golden))
    expect(clippedSamples).toBe(0)
  })

  it('24-bit stereo is what ffmpeg writes: extensible, front left and right', () => {
    const golden = fromHex(`52494646 48000000 57415645 666d7420 28000000 feff 0200 80bb0000 00650400 0600 1800
      1600 1800 03000000 01000000 00001000 800000aa00389b71 64617461 0c000000 000000 000040 0000c0 ffff7f`)
    const sound = { sampleRate: 48000, channels: [Float32Array.of(0, -0.5), Float32Array.of(0.5, 1)] }
    const { bytes, clippedSamples } = encodeWav(sound, 'pcm24')
    expect(toHex(bytes)).toBe(toHex(golden))
    expect(clippedSamples).toBe(1)
  })

  it('32-bit float stereo is extensible and counts its frames in fact (fields and samples as ffmpeg writes them)', () => {
    const golden = fromHex(`52494646 58000000 57415645 666d7420 28000000 feff 0200 80bb0000 00dc0500 0800 2000
      1600 2000 03000000 03000000 00001000 800000aa00389b71 66616374 04000000 02000000
      64617461 10000000 00000000 0000003f 000000bf 0000803f`)
    const sound = { sampleRate: 48000, channels: [Float32Array.of(0, -0.5), Float32Array.of(0.5, 1)] }
    expect(toHex(encodeWav(sound, 'float32').bytes)).toBe(toHex(golden))
  })

  it('data of odd length is padded, and the pad is counted by RIFF but not by data (RIFF specification)', () => {
    const { bytes } = encodeWav(mono(0.5), 'pcm24')
    const view = new DataView(bytes.buffer)
    expect(bytes.length % 2).toBe(0)
    expect(view.getUint32(4, true)).toBe(bytes.length - 8)
    expect(view.getUint32(bytes.length - 8, true)).toBe(3)
  })
})

describe('rounding and clipping', () => {
  const written = (sample: number) =>
    new DataView(encodeWav(mono(sample), 'pcm16').bytes.buffer).getInt16(44, true)

  it('rounds to the nearest step, ties to even (IEEE 754)', () => {
    const steps = [0.4, 0.6, 0.5, 1.5, 2.5, -0.4, -0.6, -0.5, -1.5, -2.5]
    expect(steps.map((step) => written(step / 32768) + 0)).toEqual([0, 1, 0, 2, 2, 0, -1, 0, -2, -2])
  })

  it('clips what does not fit, and counts it in every channel', () => {
    const sound = { sampleRate: 48000, channels: [Float32Array.of(2, 0.5), Float32Array.of(-1, -1.001)] }
    const { bytes, clippedSamples } = encodeWav(sound, 'pcm16')
    const view = new DataView(bytes.buffer)
    expect([44, 46, 48, 50].map((at) => view.getInt16(at, true))).toEqual([32767, -32768, 16384, -32768])
    expect(clippedSamples).toBe(2)
  })

  it('writes infinite samples at the limits and NaN as silence', () => {
    expect([Infinity, -Infinity, NaN].map(written)).toEqual([32767, -32768, 0])
  })

  it('float keeps what is above full scale and counts nothing', () => {
    const { bytes, clippedSamples } = encodeWav(mono(3.5), 'float32')
    expect(new DataView(bytes.buffer).getFloat32(bytes.length - 4, true)).toBe(3.5)
    expect(clippedSamples).toBe(0)
  })
})

it('the same seed of dither gives the same file', () => {
  fc.assert(
    fc.property(fc.integer(), fc.float32Array({ noNaN: true, min: -1, max: 1 }), (ditherSeed, samples) => {
      const sound = { sampleRate: 44100, channels: [samples] }
      const once = encodeWav(sound, 'pcm16', { ditherSeed })
      expect(encodeWav(sound, 'pcm16', { ditherSeed })).toEqual(once)
    }),
  )
})

it('refuses sound that a RIFF header cannot count', () => {
  // The length of the channels is all that is looked at before the file is refused.
  const channel = Object.defineProperty(new Float32Array(0), 'length', { value: 2 ** 30 })
  const call = () =>
    encodeWav({ sampleRate: 48000, channels: [channel] }, 'float32', { fileName: 'Long.wav' })
  expect(call).toThrow(expect.objectContaining({ code: 'too-long', fileName: 'Long.wav' }))
})
