import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import { type AudioDecoder, decodeFile, decodeFileAtRate } from '../../../src/files/decode'
import { openFile } from '../../../src/files/open-file'

const fileOf = (name: string, change = (bytes: Uint8Array<ArrayBuffer>) => bytes) => {
  const bytes = new Uint8Array(readFileSync(new URL(`../../../e2e/takes/${name}`, import.meta.url)))
  return new File([change(bytes)], name)
}
const mp3 = fileOf('second.mp3')
const m4a = fileOf('second.m4a')

/** What was encoded: every sample differs from every other. */
const SECOND = Float32Array.from({ length: 48_000 }, (_, n) => (n + 1) / 50_000)

/** A decoder that puts out `count` frames, of which the sound begins at `from`. */
const decoder =
  (count: number, from: number): AudioDecoder =>
  async (_, sampleRate) => {
    const samples = new Float32Array(count)
    samples.set(SECOND.subarray(0, Math.max(0, count - from)), from)
    return { sampleRate, numberOfChannels: 1, getChannelData: () => samples }
  }
const open = (file: File, decodeAudio: AudioDecoder) => decodeFile(file, { open: openFile, decodeAudio })

describe('lossy files, as each engine was seen to decode them', () => {
  it.each([
    ['MP3, Chromium', mp3, 48_000, 0],
    ['MP3, Firefox', mp3, 49_007, 576],
    ['MP3, WebKit', mp3, 49_536, 1105],
    ['M4A, Chromium and Firefox', m4a, 48_000, 0],
    ['M4A with its priming', m4a, 49_152, 1024],
  ])('%s: the sound that was encoded, sample for sample', async (_, file, count, from) => {
    const { sound, timing } = await open(file, decoder(count, from))
    expect(sound.channels).toEqual([SECOND])
    expect(timing).toBeNull()
  })

  it('M4A, WebKit: what is missing is not made up, and is told', async () => {
    const { sound, timing } = await open(m4a, decoder(47_104, 0))
    expect(sound.channels).toEqual([SECOND.subarray(0, 47_104)])
    expect(timing?.missingMs).toBeCloseTo((1000 * 896) / 48_000, 6)
    expect(timing?.mostLateMs).toBeCloseTo((1000 * 1024) / 48_000, 6)
  })

  it('files that do not state their delay may sit late, by the most that encoders add', async () => {
    const untagged = fileOf('second.mp3', (bytes) => {
      bytes.set([0, 0, 0, 0], Buffer.from(bytes).indexOf('Info'))
      return bytes
    })
    const { sound, timing } = await open(untagged, decoder(50_688, 2257))
    expect(sound.channels[0]).toHaveLength(50_688)
    // 1160 and 529 frames, LAME technical FAQ.
    expect(timing).toEqual({ mostLateMs: (1000 * 1689) / 48_000, missingMs: 0 })
  })

  it('a backing is cut before its rate is converted, and keeps what cannot be told', async () => {
    const rates: number[] = []
    const decodeAudio: AudioDecoder = async (bytes, sampleRate) => {
      rates.push(sampleRate)
      if (sampleRate === 48_000) return decoder(47_104, 0)(bytes, sampleRate)
      const samples = new Float32Array(new Float32Array(bytes.slice(-4 * 47_104)))
      return { sampleRate, numberOfChannels: 1, getChannelData: () => samples }
    }
    const backing = await decodeFileAtRate(m4a, 44_100, { open: openFile, decodeAudio })
    expect(rates).toEqual([48_000, 44_100])
    expect(backing.timing?.missingMs).toBeGreaterThan(18)
  })
})

it('WAV and FLAC have nothing to be told', async () => {
  const { timing } = await open(fileOf('second.flac'), decoder(48_000, 0))
  expect(timing).toBeNull()
})
