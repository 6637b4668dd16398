import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { readWav } from '../../src/files/wav/wav-reader'
import { encodeWav, type WavFormat } from '../../src/files/wav/wav-writer'

describe('there and back', () => {
  const soundOf = (samples: fc.Arbitrary<number>) =>
    fc
      .tuple(
        fc.integer({ min: 1, max: 2 }),
        fc.integer({ min: 1, max: 40 }),
        fc.integer({ min: 8000, max: 192000 }),
      )
      .chain(([channels, frames, sampleRate]) =>
        fc
          .array(fc.array(samples, { minLength: frames, maxLength: frames }), {
            minLength: channels,
            maxLength: channels,
          })
          .map((columns) => ({ sampleRate, channels: columns.map((column) => Float32Array.from(column)) })),
      )
  const steps = (bits: number) =>
    fc.integer({ min: -(2 ** (bits - 1)), max: 2 ** (bits - 1) - 1 }).map((step) => step / 2 ** (bits - 1))

  it.each<[WavFormat, fc.Arbitrary<number>]>([
    ['pcm16', steps(16)],
    ['pcm24', steps(24)],
    ['float32', fc.float({ noNaN: true })],
  ])('%s: a file decoded and written again is the same file, sample for sample', (format, samples) => {
    fc.assert(
      fc.property(soundOf(samples), (sound) => {
        const { bytes, clippedSamples } = encodeWav(sound, format)
        const again = readWav(bytes, 'take.wav')
        expect(again.sound).toEqual(sound)
        expect(clippedSamples).toBe(0)
        expect(encodeWav(again.sound, format).bytes).toEqual(bytes)
      }),
    )
  })

  it.each<[WavFormat, number]>([
    ['pcm16', 2 ** -16],
    ['pcm24', 2 ** -24],
  ])('%s: any sample within full scale comes back to half a step', (format, halfStep) => {
    const inside = fc.float({ min: -1, max: Math.fround(1 - 2 ** -15), noNaN: true })
    fc.assert(
      fc.property(soundOf(inside), (sound) => {
        const again = readWav(encodeWav(sound, format).bytes, 'take.wav').sound
        sound.channels.forEach((channel, c) => {
          channel.forEach((sample, i) => {
            expect(Math.abs(sample - (again.channels[c]?.[i] ?? NaN))).toBeLessThanOrEqual(halfStep)
          })
        })
      }),
    )
  })

  it('every 16-bit step survives', () => {
    const all = Float32Array.from({ length: 65536 }, (_, i) => (i - 32768) / 32768)
    const sound = { sampleRate: 44100, channels: [all] }
    expect(readWav(encodeWav(sound, 'pcm16').bytes, 'take.wav').sound).toEqual(sound)
  })
})

describe('recordings found on the machine', () => {
  const FOLDER = '/usr/share/sounds/alsa'
  // Frames as the wave module of Python 3 counts them; all are mono, 16 bits, 48 kHz.
  const FRAMES: Readonly<Record<string, number>> = {
    'Front_Center.wav': 68545,
    'Front_Left.wav': 71042,
    'Front_Right.wav': 73473,
    'Noise.wav': 67579,
    'Rear_Center.wav': 65026,
    'Rear_Left.wav': 63010,
    'Rear_Right.wav': 73218,
    'Side_Left.wav': 67412,
    'Side_Right.wav': 64961,
  }

  it('are read as the wave module of Python 3 reads them, and written back byte for byte', () => {
    const names = readdirSync(FOLDER).filter((name) => name.endsWith('.wav'))
    expect(names.sort()).toEqual(Object.keys(FRAMES))
    for (const name of names) {
      const file = readFileSync(`${FOLDER}/${name}`)
      const { sound, facts } = readWav(file, name)
      expect(facts).toMatchObject({
        coding: 'pcm',
        sampleRate: 48000,
        channels: 1,
        bitsPerSample: 16,
        frames: FRAMES[name],
      })
      const data = file.subarray(facts.dataOffset, facts.dataOffset + facts.dataBytes)
      expect(Buffer.compare(encodeWav(sound, 'pcm16').bytes.subarray(44), data)).toBe(0)
    }
  })
})
