import { describe, expect, it } from 'vitest'
import { sibilanceDb, sibilantEvents } from '../../src/core/measure'
import { hissShape } from '../../src/core/measure/sibilance/sibilant-shape'
import { ShortSpectra } from '../../src/core/measure/spectrum/short-spectra'
import type { Sound } from '../../src/core/sound/sound'
import {
  betweenVowels,
  EDGE_SECONDS,
  evenNoise,
  F,
  hiss,
  loudnessOf,
  S,
  SH,
  TH,
  vowel,
} from '../setup/fricatives'
import { recordings } from '../setup/recordings'
import { inChannels, joined, noise, scaled } from '../setup/signals'

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

  it('hiss as broad as breath, however loud', () => {
    for (const levelDb of [-6, -15, -25]) {
      const breath = noise(48_000, 0.4, 1, 3, () => loudnessOf(levelDb)).channels[0] ?? new Float32Array()
      expect(sibilantEvents(betweenVowels(48_000, breath))).toEqual([])
    }
  })

  it('a click of 10 ms', () => {
    const click = hiss(48_000, 0.01, S.peakHz, 0.1)
    expect(
      sibilantEvents(inChannels(48_000, joined([vowel(48_000, 0.5), click, vowel(48_000, 0.5)]), 1)),
    ).toEqual([])
  })
})

describe('told by its spectrum, not by its level alone', () => {
  const rates = [16_000, 22_050, 44_100, 48_000, 96_000]
  const levels = [-10, -14, -18, -22, -26]
  it.each(rates)('/s/ and /sh/ are found from 10 to 26 dB below the vowel, at %i Hz', (sampleRate) => {
    for (const levelDb of levels) {
      for (const { peakHz, seconds } of [S, SH]) {
        const sound = betweenVowels(sampleRate, hiss(sampleRate, seconds, peakHz, loudnessOf(levelDb)))
        expect(sibilantEvents(sound), `${peakHz} Hz at ${levelDb} dB`).toHaveLength(1)
      }
    }
  })

  it.each(rates)('/f/ and /th/ are not, whatever their level, at %i Hz', (sampleRate) => {
    for (const levelDb of [F.levelDb, TH.levelDb, ...levels]) {
      for (const { seconds } of [F, TH]) {
        const sound = betweenVowels(sampleRate, evenNoise(sampleRate, seconds, loudnessOf(levelDb)))
        expect(sibilantEvents(sound), `${levelDb} dB`).toEqual([])
      }
    }
  })

  it.each([-55, -45])('the same with white noise of %i dB in the room', (roomDb) => {
    const inRoom = (sound: Sound) => {
      const [samples = new Float32Array()] = sound.channels
      const [room = new Float32Array()] = noise(
        48_000,
        2,
        1,
        8,
        () => loudnessOf(roomDb) * Math.sqrt(3),
      ).channels
      return inChannels(
        48_000,
        samples.map((x, i) => x + (room[i] ?? 0)),
        1,
      )
    }
    const soft = hiss(48_000, S.seconds, S.peakHz, loudnessOf(-24))
    expect(sibilantEvents(inRoom(betweenVowels(48_000, soft)))).toHaveLength(1)
    const f = evenNoise(48_000, F.seconds, loudnessOf(F.levelDb))
    expect(sibilantEvents(inRoom(betweenVowels(48_000, f)))).toEqual([])
  })

  it('variance is that of an even spectrum, (b - a)^2 / 12, prominence that of a step in it', () => {
    // Sines 50 Hz apart and in step: pulses with an even spectrum.
    const sines = (sampleRate: number, fromHz: number, toHz: number, size: number) =>
      Array.from({ length: Math.round((toHz - fromHz) / 50) }, (_, k) => ({
        turn: (2 * Math.PI * (fromHz + 25 + 50 * k)) / sampleRate,
        size,
      }))
    const shapeOf = (sampleRate: number, parts: ReturnType<typeof sines>) => {
      const samples = Float32Array.from({ length: sampleRate / 4 }, (_, i) =>
        parts.reduce((sum, { turn, size }) => sum + size * Math.cos(turn * i), 0),
      )
      return hissShape(new ShortSpectra({ sampleRate, channels: [samples] }), 5, 45)
    }
    for (const sampleRate of [22_050, 48_000, 96_000]) {
      const even = shapeOf(sampleRate, sines(sampleRate, 2000, 8000, 0.01))
      expect(Math.abs(even.varianceKhz2 / 3 - 1)).toBeLessThan(0.1)
      const stepped = [...sines(sampleRate, 400, 2200, 0.001), ...sines(sampleRate, 2200, 10_000, 0.01)]
      expect(Math.abs(shapeOf(sampleRate, stepped).prominenceDb - 20)).toBeLessThan(2)
    }
  })

  it('a hiss of 50 ms is a T where it breaks out of a closure, a short sibilant where it comes out of a vowel', () => {
    const short = hiss(48_000, 0.05, S.peakHz, loudnessOf(-14))
    const closure = new Float32Array(2400)
    const [before, after] = [vowel(48_000, 0.4), vowel(48_000, 0.4)]
    expect(sibilantEvents(inChannels(48_000, joined([before, short, after]), 1))).toHaveLength(1)
    expect(sibilantEvents(inChannels(48_000, joined([before, closure, short, after]), 1))).toEqual([])
    const long = hiss(48_000, 0.1, S.peakHz, loudnessOf(-14))
    expect(sibilantEvents(inChannels(48_000, joined([before, closure, long, after]), 1))).toHaveLength(1)
  })

  it('one far softer than the others of the take is none; alone it is one', () => {
    const said = (levelsDb: readonly number[]) => {
      const v = vowel(48_000, 0.4)
      const parts = levelsDb.flatMap((levelDb) => [hiss(48_000, 0.12, S.peakHz, loudnessOf(levelDb)), v])
      return sibilantEvents(inChannels(48_000, joined([v, ...parts]), 1)).length
    }
    expect(said([-6, -6, -24, -6])).toBe(3)
    expect(said([-6, -6, -17, -6])).toBe(4)
    expect(said([-24])).toBe(1)
    expect(said([-24, -22, -26, -18])).toBe(4)
  })
})

describe('recorded voices saying what their file names say', () => {
  const voices = recordings().filter(({ name }) => name !== 'Noise.wav')
  const saidIn = (name: string) => (/Side|Center/.test(name) ? 1 : 0)

  it.each(voices)('$name: each S, and no F, T, vowel or R', ({ name, sound }) => {
    expect(sibilantEvents(sound)).toHaveLength(saidIn(name))
  })

  it.each(voices.filter(({ name }) => saidIn(name) > 0))('$name: the S turned down by 8 dB', ({ sound }) => {
    const [event] = sibilantEvents(sound)
    const turnedDown = (samples: Float32Array) =>
      samples.map((x, i) => {
        const seconds = i / sound.sampleRate
        const inside = event && seconds > event.startSeconds && seconds < event.endSeconds
        return inside ? x * 10 ** (-8 / 20) : x
      })
    const softer = sibilantEvents({ ...sound, channels: sound.channels.map(turnedDown) })
    expect(softer).toHaveLength(1)
    expect(Math.abs((softer[0]?.levelDb ?? 0) - (event?.levelDb ?? 0) + 8)).toBeLessThan(1)
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
