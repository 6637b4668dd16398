import { ebur128_integrated_stereo } from 'ebur128-wasm'
import { describe, expect, it } from 'vitest'
import { sibilantEvents } from '../../src/core/measure'
import { durationSeconds, frameCount, type Sound } from '../../src/core/sound/sound'
import { demoTake } from '../../src/demo'
import { toFrame } from '../../src/demo/song/levels'

const take = demoTake()
const { vocal, backing, labels } = take
const db = (gain: number) => 20 * Math.log10(gain)

function peakOf(sound: Sound): number {
  return sound.channels.reduce(
    (most, channel) => channel.reduce((peak, x) => Math.max(peak, Math.abs(x)), most),
    0,
  )
}

describe('demoTake', () => {
  it('gives the same bits every time', () => {
    const again = demoTake()
    expect(again.labels).toEqual(labels)
    const bytes = (sound: Sound) => sound.channels.map(({ buffer }) => Buffer.from(buffer))
    expect(bytes(again.vocal).every((channel, i) => channel.equals(bytes(vocal)[i] ?? Buffer.of()))).toBe(
      true,
    )
    expect(bytes(again.backing).every((channel, i) => channel.equals(bytes(backing)[i] ?? Buffer.of()))).toBe(
      true,
    )
  })

  it('is a mono vocal and a stereo backing of 20 to 30 s at 48 kHz, equally long', () => {
    expect([vocal.sampleRate, backing.sampleRate]).toEqual([48_000, 48_000])
    expect([vocal.channels.length, backing.channels.length]).toEqual([1, 2])
    expect(durationSeconds(vocal)).toBeGreaterThan(20)
    expect(durationSeconds(vocal)).toBeLessThan(30)
    expect(backing.channels.map((channel) => channel.length)).toEqual([frameCount(vocal), frameCount(vocal)])
  })

  it('peaks between -6 and -3 dBFS, with finite samples and no direct current', () => {
    expect(db(peakOf(vocal))).toBeGreaterThan(-6)
    expect(db(peakOf(vocal))).toBeLessThan(-3)
    expect(db(peakOf(backing))).toBeLessThan(-3)
    for (const channel of [...vocal.channels, ...backing.channels]) {
      expect(channel.every(Number.isFinite)).toBe(true)
      expect(Math.abs(channel.reduce((sum, x) => sum + x, 0) / channel.length)).toBeLessThan(2e-4)
    }
  })

  it('has a backing of about -20 LUFS', () => {
    // libebur128, a general-purpose library; 1 LU is what "about" means here.
    const [left = new Float32Array(), right = new Float32Array()] = backing.channels
    const loudness = ebur128_integrated_stereo(48_000, left, right)
    expect(Math.abs(loudness + 20), `${loudness} LUFS`).toBeLessThan(1)
  })

  it('labels the vocal from end to end without gaps', () => {
    expect(labels.phonemes[0]?.startSeconds).toBe(0)
    expect(labels.phonemes.at(-1)?.endSeconds).toBe(durationSeconds(vocal))
    labels.phonemes.forEach((label, index) => {
      expect(label.endSeconds).toBeGreaterThan(label.startSeconds)
      const next = labels.phonemes[index + 1]
      if (next) expect(next.startSeconds).toBe(label.endSeconds)
      expect(label.frequencyHz === undefined).toBe(label.kind !== 'vowel')
    })
  })

  it('is sung above 200 Hz, with plenty of s and t, and breaths', () => {
    const notes = labels.phonemes.flatMap(({ frequencyHz }) => frequencyHz ?? [])
    expect(Math.min(...notes)).toBeGreaterThan(200)
    const count = (symbol: string) => labels.phonemes.filter((label) => label.symbol === symbol).length
    expect(count('s')).toBeGreaterThan(9)
    expect(count('t')).toBeGreaterThan(9)
    expect(count('breath')).toBe(labels.phrases.length)
  })
})

describe('the sibilants of the take', () => {
  it.each([0, -8, -12])(
    'has sibilants, turned down by %d dB, where they are labelled and nowhere else',
    (gainDb) => {
      const sibilants = labels.phonemes.filter(({ kind }) => kind === 'sibilant')
      const turnedDown = (vocal.channels[0] ?? new Float32Array()).slice()
      for (const { startSeconds, endSeconds } of sibilants) {
        for (let i = toFrame(startSeconds); i < toFrame(endSeconds); i++) {
          turnedDown[i] = (turnedDown[i] ?? 0) * 10 ** (gainDb / 20)
        }
      }
      const events = sibilantEvents({ ...vocal, channels: [turnedDown] })
      const overlap = (a: { startSeconds: number; endSeconds: number }, b: typeof a) =>
        Math.min(a.endSeconds, b.endSeconds) - Math.max(a.startSeconds, b.startSeconds)
      // A z that runs into an s is found as one with it.
      for (const label of sibilants) expect(events.some((event) => overlap(event, label) > 0.02)).toBe(true)
      for (const event of events) expect(sibilants.some((label) => overlap(event, label) > 0.02)).toBe(true)
    },
  )
})
