import { describe, expect, it } from 'vitest'
import { sibilanceDb, sibilantEvents } from '../../src/core/measure'
import { recordings } from '../setup/recordings'
import { inChannels, joined, mulberry32, noise, scaled } from '../setup/signals'

/**
 * A. Jongman, R. Wayland, S. Wong, "Acoustic characteristics of English fricatives", JASA 108(3), 2000: /s/
 * peaks at 6839 Hz, lasts 178 ms and lies 11.0 dB below the vowel.
 */
const S = { peakHz: 6839, seconds: 0.178, levelDb: -11 }
/** The same of /sh/. */
const SH = { peakHz: 3820, seconds: 0.178, levelDb: -9.9 }
/** Half a window and a hop of the analysis. */
const EDGE_SECONDS = 0.015

/** A vowel: harmonics of 220 Hz under the first three formants of a man's /a/ (Peterson, Barney, JASA 24, 1952). */
function vowel(sampleRate: number, seconds: number): Float32Array {
  const formants: [number, number][] = [
    [730, 1],
    [1090, 0.6],
    [2440, 0.15],
  ]
  const sizes = Array.from({ length: 18 }, (_, k) =>
    formants.reduce((sum, [hz, size]) => sum + size / (1 + (((k + 1) * 220 - hz) / 80) ** 2), 0.002),
  )
  return withRms(
    Float32Array.from({ length: Math.round(seconds * sampleRate) }, (_, i) =>
      sizes.reduce(
        (sum, size, k) => sum + size * Math.sin((2 * Math.PI * 220 * (k + 1) * i) / sampleRate + k * k),
        0,
      ),
    ),
    0.1,
  )
}

/** Noise through a resonance 1.5 kHz wide (D. H. Klatt, JASA 67(3), 1980), so with a peak where /s/ has it. */
function hiss(sampleRate: number, seconds: number, peakHz: number, rms: number): Float32Array {
  const random = mulberry32(9)
  const c = -Math.exp((-2 * Math.PI * 1500) / sampleRate)
  const b = 2 * Math.exp((-Math.PI * 1500) / sampleRate) * Math.cos((2 * Math.PI * peakHz) / sampleRate)
  let [y1, y2, x2, x1] = [0, 0, 0, 0]
  return withRms(
    Float32Array.from({ length: Math.round(seconds * sampleRate) }, () => {
      const x = random() - 0.5
      // Zeros at DC and half the rate keep the resonance a band.
      const y = x - x2 + b * y1 + c * y2
      ;[x2, x1, y2, y1] = [x1, x, y1, y]
      return y
    }),
    rms,
  )
}

function withRms(samples: Float32Array, rms: number): Float32Array {
  const now = Math.sqrt(samples.reduce((sum, x) => sum + x * x, 0) / samples.length)
  return samples.map((x) => (x * rms) / now)
}

const loudnessOf = (levelDb: number) => 0.1 * 10 ** (levelDb / 20)

describe('an /s/ between two vowels', () => {
  it.each([22_050, 44_100, 48_000, 96_000])('is found where it is, at its level, at %i Hz', (sampleRate) => {
    const s = hiss(sampleRate, S.seconds, S.peakHz, loudnessOf(S.levelDb))
    const samples = joined([vowel(sampleRate, 0.4), s, vowel(sampleRate, 0.4)])
    const events = sibilantEvents(inChannels(sampleRate, samples, 2))
    expect(events).toHaveLength(1)
    const [event] = events
    expect(Math.abs((event?.startSeconds ?? 0) - 0.4)).toBeLessThan(EDGE_SECONDS)
    expect(Math.abs((event?.endSeconds ?? 0) - 0.4 - S.seconds)).toBeLessThan(EDGE_SECONDS)
    expect(Math.abs((event?.levelDb ?? Number.NaN) - S.levelDb)).toBeLessThan(2)
  })

  it('and so is an /sh/', () => {
    const sh = hiss(48_000, SH.seconds, SH.peakHz, loudnessOf(SH.levelDb))
    const events = sibilantEvents(inChannels(48_000, joined([vowel(48_000, 0.4), sh, vowel(48_000, 0.4)]), 1))
    expect(events).toHaveLength(1)
    expect(Math.abs((events[0]?.startSeconds ?? 0) - 0.4)).toBeLessThan(EDGE_SECONDS)
    expect(Math.abs((events[0]?.endSeconds ?? 0) - 0.4 - SH.seconds)).toBeLessThan(EDGE_SECONDS)
  })

  it('a dip of 10 ms does not cut it in two', () => {
    const half = hiss(48_000, 0.08, S.peakHz, loudnessOf(S.levelDb))
    const parts = [vowel(48_000, 0.4), half, new Float32Array(480), half, vowel(48_000, 0.4)]
    expect(sibilantEvents(inChannels(48_000, joined(parts), 1))).toHaveLength(1)
  })

  it('a sharper one reads that much higher', () => {
    const level = (levelDb: number) => {
      const parts = [
        vowel(48_000, 0.4),
        hiss(48_000, 0.15, S.peakHz, loudnessOf(levelDb)),
        vowel(48_000, 0.4),
      ]
      return sibilantEvents(inChannels(48_000, joined(parts), 1))[0]?.levelDb ?? Number.NaN
    }
    expect(level(-2) - level(-12)).toBeCloseTo(10, 0)
  })

  it('each of several is found, in order, whatever the level of the take', () => {
    const s = hiss(48_000, 0.1, S.peakHz, loudnessOf(-9))
    const v = vowel(48_000, 0.35)
    const sound = inChannels(48_000, joined([s, v, s, v, s, v]), 1)
    const starts = (gain: number) =>
      sibilantEvents(scaled(sound, gain)).map(({ startSeconds }) => startSeconds)
    expect(starts(1)).toHaveLength(3)
    starts(1).forEach((start, i) => {
      expect(Math.abs(start - i * 0.45)).toBeLessThan(EDGE_SECONDS)
    })
    expect(starts(1 / 64)).toEqual(starts(1))
  })
})

describe('how loud sibilants are against vowels', () => {
  const spoken = (levelsDb: readonly number[], sampleRate = 48_000) => {
    const parts = levelsDb.map((levelDb) => hiss(sampleRate, S.seconds, S.peakHz, loudnessOf(levelDb)))
    const between = vowel(sampleRate, 0.4)
    return inChannels(sampleRate, joined([between, ...parts.flatMap((part) => [part, between])]), 1)
  }

  it.each([22_050, 44_100, 48_000, 96_000])('is the level of /s/ at %i Hz (Jongman et al.)', (sampleRate) => {
    const sound = spoken([S.levelDb], sampleRate)
    expect(Math.abs((sibilanceDb(sound, sibilantEvents(sound)) ?? 0) - S.levelDb)).toBeLessThan(2)
  })

  it('agrees with the level of each event, and is the median of several', () => {
    const sound = spoken([-14, -6, -10])
    const events = sibilantEvents(sound)
    for (const event of events) {
      expect(Math.abs((sibilanceDb(sound, [event]) ?? 0) - (event.levelDb ?? 0))).toBeLessThan(1)
    }
    expect(sibilanceDb(sound, events)).toBe(sibilanceDb(sound, events.slice(2)))
  })

  it('falls by as much as they are held back, whatever the level of the take', () => {
    const [before, held] = [spoken([-6, -6]), spoken([-14, -14])]
    const events = sibilantEvents(before)
    const change = (sibilanceDb(held, events) ?? 0) - (sibilanceDb(before, events) ?? 0)
    expect(Math.abs(change + 8)).toBeLessThan(0.2)
    expect(sibilanceDb(scaled(before, 1 / 64), events)).toBeCloseTo(sibilanceDb(before, events) ?? 0, 4)
  })

  it('is unknown without sibilants, or with none that has a vowel near', () => {
    const sound = spoken([-6])
    expect(sibilanceDb(sound, [])).toBeNull()
    const alone = inChannels(48_000, hiss(48_000, 0.5, S.peakHz, 0.1), 1)
    expect(sibilanceDb(alone, [{ startSeconds: 0, endSeconds: 0.5, levelDb: null }])).toBeNull()
    const silence = inChannels(48_000, new Float32Array(48_000), 1)
    expect(sibilanceDb(silence, [{ startSeconds: 0.2, endSeconds: 0.4, levelDb: null }])).toBeNull()
  })
})

describe('what is not a sibilant', () => {
  it('a vowel, silence, no sound at all', () => {
    expect(sibilantEvents(inChannels(48_000, vowel(48_000, 1), 1))).toEqual([])
    expect(sibilantEvents(inChannels(48_000, new Float32Array(48_000), 1))).toEqual([])
    expect(sibilantEvents({ sampleRate: 48_000, channels: [] })).toEqual([])
  })

  it('room hiss 50 dB below the voice, in the pauses', () => {
    const room = noise(48_000, 1, 1, 2, () => loudnessOf(-50)).channels
    expect(
      sibilantEvents(inChannels(48_000, joined([vowel(48_000, 1), ...room, vowel(48_000, 1)]), 1)),
    ).toEqual([])
  })

  it('faint hiss with nothing sung near', () => {
    const gap = new Float32Array(24_000)
    const parts = [vowel(48_000, 1), gap, hiss(48_000, 0.2, S.peakHz, loudnessOf(-45)), gap, vowel(48_000, 1)]
    expect(sibilantEvents(inChannels(48_000, joined(parts), 1))).toEqual([])
  })

  it('an /f/, 20.8 dB below the vowel (Jongman et al.)', () => {
    const f = hiss(48_000, 0.166, 7733, loudnessOf(-20.8))
    expect(
      sibilantEvents(inChannels(48_000, joined([vowel(48_000, 0.4), f, vowel(48_000, 0.4)]), 1)),
    ).toEqual([])
  })

  it('a click of 10 ms', () => {
    const click = hiss(48_000, 0.01, S.peakHz, 0.1)
    expect(
      sibilantEvents(inChannels(48_000, joined([vowel(48_000, 0.5), click, vowel(48_000, 0.5)]), 1)),
    ).toEqual([])
  })
})

describe('recorded voices saying what their file names say', () => {
  it.each(recordings().filter(({ name }) => name !== 'Noise.wav'))('$name', ({ name, sound }) => {
    const long = sibilantEvents(sound).filter(
      ({ startSeconds, endSeconds }) => endSeconds - startSeconds > 0.05,
    )
    expect(long).toHaveLength(/Side|Center/.test(name) ? 1 : 0)
  })
})

it('a sibilant with no vowel near has no level to compare with', () => {
  const alone = joined([new Float32Array(48_000), hiss(48_000, 0.2, S.peakHz, 0.1), new Float32Array(48_000)])
  const events = sibilantEvents(inChannels(48_000, alone, 1))
  expect(events).toHaveLength(1)
  expect(events[0]?.levelDb).toBeNull()
})

it('refuses a rate that leaves no band above the split', () => {
  const sound = inChannels(8000, new Float32Array(8000), 1)
  expect(() => sibilantEvents(sound)).toThrow(expect.objectContaining({ code: 'sample-rate' }))
})
