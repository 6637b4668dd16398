import { describe, expect, it } from 'vitest'
import { type PitchFrame, pitchTrack, sungRange } from '../../src/core/measure'
import { Yin } from '../../src/core/measure/pitch/yin'
import type { Sound } from '../../src/core/sound/sound'
import { inChannels, joined, noise, scaled } from '../setup/signals'

/** Fundamentals are known by construction; YIN's windowed estimate is exact but for the parabola of step 5. */
const TOLERANCE_CENTS = 1

const sampleRate = 48_000

/** A tone of the given harmonics, its fundamental in Hz a function of time. */
function tone(
  seconds: number,
  frequencyHz: (seconds: number) => number,
  harmonics: readonly number[],
): Float32Array {
  let phase = 0
  return Float32Array.from({ length: seconds * sampleRate }, (_, i) => {
    phase += frequencyHz(i / sampleRate) / sampleRate
    return 0.1 * harmonics.reduce((sum, size, k) => sum + size * Math.sin(2 * Math.PI * (k + 1) * phase), 0)
  })
}

const steady = (hz: number, harmonics: readonly number[]) =>
  inChannels(
    sampleRate,
    tone(0.3, () => hz, harmonics),
    1,
  )
const SINE = [1]
const VOICE = Array.from({ length: 10 }, (_, k) => 1 / (k + 1))

function cents(measured: number | null, expected: number): number {
  return measured === null ? Number.NaN : 1200 * Math.log2(measured / expected)
}

function expectPitch(track: readonly PitchFrame[], hz: number, tolerance = TOLERANCE_CENTS): void {
  expect(track.length).toBeGreaterThan(10)
  for (const { frequencyHz, confidence, timeSeconds } of track) {
    expect(Math.abs(cents(frequencyHz, hz)), `${frequencyHz} at ${timeSeconds} s for ${hz}`).toBeLessThan(
      tolerance,
    )
    expect(confidence).toBeGreaterThan(0.95)
  }
}

/** The filter against rumble needs a moment; before it has settled the sound does not yet repeat itself. */
const settled = (track: PitchFrame[]) => track.filter(({ timeSeconds }) => timeSeconds > 0.1)

describe('YIN (de Cheveigne, Kawahara, JASA 111(4), 2002)', () => {
  // Twelve-tone equal temperament on A4 = 440 Hz (ISO 16): E2, A2, C3, A3, C4, A4, A5, C6.
  const notes = [82.41, 110, 130.81, 220, 261.63, 440, 880, 1046.5]

  it.each(notes)('a sine of %d Hz', (hz) => {
    expectPitch(settled(pitchTrack(steady(hz, SINE))), hz)
  })

  it.each(notes.slice(0, -1))('ten harmonics falling as 1 / k on %d Hz', (hz) => {
    expectPitch(settled(pitchTrack(steady(hz, VOICE))), hz)
  })

  it('a missing fundamental: harmonics 2 to 10 of 110 Hz are heard, and measured, as 110 Hz', () => {
    expectPitch(settled(pitchTrack(steady(110, [0, ...VOICE.slice(1)]))), 110)
  })

  it('the same at other sample rates', () => {
    for (const rate of [22_050, 44_100, 96_000]) {
      const samples = Float32Array.from(
        { length: 0.3 * rate },
        (_, i) => 0.3 * Math.sin((2 * Math.PI * 220 * i) / rate),
      )
      expectPitch(settled(pitchTrack(inChannels(rate, samples, 2))), 220, 1.5)
    }
  })

  it('agrees with equations 6 and 8 summed term by term', () => {
    const [windowFrames, longestLag] = [200, 150]
    const [hiss = new Float32Array()] = noise(8000, 1, 1, 6, () => 0.02).channels
    const samples = hiss.map((x, i) => x + 0.1 * Math.sin((2 * Math.PI * i) / 61.3))
    const yin = new Yin(windowFrames, longestLag)
    for (const start of [0, 123, 7649]) {
      yin.analyse(samples.subarray(start))
      const at = (i: number) => samples[start + i] ?? 0
      const difference = Array.from({ length: longestLag + 2 }, (_, lag) =>
        Array.from({ length: windowFrames }, (_, j) => (at(j) - at(j + lag)) ** 2).reduce((a, b) => a + b),
      )
      for (let lag = 2; lag <= longestLag; lag++) {
        const mean = difference.slice(1, lag + 1).reduce((a, b) => a + b) / lag
        const { aperiodicity } = yin.period(0, lag, lag)
        expect(aperiodicity).toBeCloseTo((difference[lag] ?? Number.NaN) / mean, 9)
      }
    }
  })

  it('follows a vibrato of 6 Hz and +-70 cents (mean rate and extent of singers: E. Prame, JASA 1994, 1997)', () => {
    const vibrato = (t: number) => 330 * 2 ** ((70 / 1200) * Math.sin(2 * Math.PI * 6 * t))
    const track = settled(pitchTrack(inChannels(sampleRate, tone(1, vibrato, VOICE), 1)))
    const errors = track.map(({ timeSeconds, frequencyHz }) =>
      Math.abs(cents(frequencyHz, vibrato(timeSeconds))),
    )
    // The rest is the estimate's own: it averages over its window while the pitch bends.
    expect(Math.max(...errors)).toBeLessThan(5)
    const measured = track.map(({ frequencyHz }) => cents(frequencyHz, 330))
    expect(Math.max(...measured)).toBeGreaterThan(55)
    expect(Math.min(...measured)).toBeLessThan(-55)
  })

  // A pitch belongs to the middle of the two stretches compared; stamped elsewhere it is early or late.
  it.each([100, 165, 330, 660])('says of a glide up or down from %d Hz when it was where', (startHz) => {
    for (const octavesASecond of [1, -1]) {
      const glide = (t: number) => startHz * 2 ** (octavesASecond * t)
      const track = settled(pitchTrack(inChannels(sampleRate, tone(0.6, glide, VOICE), 1)))
      expect(track.length).toBeGreaterThan(30)
      // The glide was at the pitch measured this long before the time given.
      const lateness = track.map(
        ({ timeSeconds, frequencyHz }) =>
          cents(glide(timeSeconds), frequencyHz ?? Number.NaN) / 1200 / octavesASecond,
      )
      const mean = lateness.reduce((sum, seconds) => sum + seconds, 0) / lateness.length
      expect(Math.abs(mean)).toBeLessThan(0.0005)
    }
  })

  it('gives times in order, whatever the pitch does and where there is none', () => {
    const leaps = joined([900, 90, 900].map((hz) => tone(0.2, () => hz, VOICE)))
    const [hiss = new Float32Array()] = noise(sampleRate, 0.3, 1, 5, () => 0.1).channels
    const track = pitchTrack(inChannels(sampleRate, joined([leaps, hiss]), 1))
    const times = track.map(({ timeSeconds }) => timeSeconds)
    expect(times).toEqual(times.toSorted((a, b) => a - b))
  })

  it('keeps to the period in clicks and in breathy noise, where multiples of it fit as well', () => {
    const voice = tone(1, () => 220, VOICE)
    const [hiss = new Float32Array()] = noise(sampleRate, 1, 1, 12, () => 1).channels
    const clicks = voice.map((x, i) => x + (i % 4800 < 192 ? 0.15 * (hiss[i] ?? 0) : 0))
    const breathy = voice.map((x, i) => x + 0.06 * (hiss[i] ?? 0))
    for (const samples of [clicks, breathy]) {
      const pitches = pitchTrack(inChannels(sampleRate, samples, 1)).map(({ frequencyHz }) => frequencyHz)
      const sung = pitches.filter((hz) => hz !== null)
      expect(sung.length).toBeGreaterThan(0.9 * pitches.length)
      // More than 20 % off is another note or another octave.
      expect(sung.filter((hz) => Math.abs(hz / 220 - 1) > 0.2)).toEqual([])
    }
  })

  it('is not misled by rumble louder than the voice, nor by an offset', () => {
    const voice = tone(0.5, () => 196, VOICE)
    const spoilt = voice.map((x, i) => x + 0.2 + 0.4 * Math.sin((2 * Math.PI * 23 * i) / sampleRate))
    for (const { frequencyHz } of settled(pitchTrack(inChannels(sampleRate, spoilt, 1)))) {
      expect(Math.abs(cents(frequencyHz, 196))).toBeLessThan(20)
    }
  })
})

describe('pitchTrack where nothing is sung', () => {
  const none = (sound: Sound) => pitchTrack(sound).every(({ frequencyHz }) => frequencyHz === null)

  it('noise and silence have no pitch, and little confidence', () => {
    const hiss = noise(sampleRate, 1, 1, 4, () => 0.1)
    expect(none(hiss)).toBe(true)
    expect(Math.max(...pitchTrack(hiss).map(({ confidence }) => confidence))).toBeLessThan(0.6)
    const silence = inChannels(sampleRate, new Float32Array(sampleRate), 1)
    expect(none(silence)).toBe(true)
    expect(pitchTrack(silence).every(({ confidence }) => confidence === 0)).toBe(true)
  })

  it('a hum 60 dB below the singing is not sung', () => {
    const hum = tone(0.5, () => 100, SINE).map((x) => x * 0.001)
    const track = pitchTrack(inChannels(sampleRate, joined([tone(0.5, () => 300, VOICE), hum]), 1))
    expect(
      track.filter(({ timeSeconds }) => timeSeconds > 0.6).every(({ frequencyHz }) => frequencyHz === null),
    ).toBe(true)
    expect(track.some(({ frequencyHz }) => frequencyHz !== null)).toBe(true)
  })

  it('a sound shorter than one window gives no frames', () => {
    for (const frames of [0, 1, 1000]) {
      expect(pitchTrack(inChannels(sampleRate, new Float32Array(frames), 1))).toEqual([])
    }
  })

  it('does not depend on level', () => {
    const sound = steady(247, VOICE)
    const quiet = pitchTrack(scaled(sound, 2 ** -8))
    pitchTrack(sound).forEach(({ frequencyHz }, i) => {
      expect(quiet[i]?.frequencyHz).toBe(frequencyHz)
    })
  })

  it('refuses a range it cannot search', () => {
    const sound = steady(220, SINE)
    for (const options of [
      { lowestHz: 5 },
      { lowestHz: 500, highestHz: 400 },
      { highestHz: 20_000 },
      { hopSeconds: 0 },
    ]) {
      expect(() => pitchTrack(sound, options)).toThrow(expect.objectContaining({ code: 'option' }))
    }
  })
})

describe('sungRange', () => {
  const at = (...hz: (number | null)[]): PitchFrame[] =>
    hz.map((frequencyHz, i) => ({ timeSeconds: i / 100, frequencyHz, confidence: 1 }))
  const held = (hz: number, frames: number) => Array<number>(frames).fill(hz)

  it('is the lowest and highest held note of a melody', () => {
    const melody = joined([220, 262, 330, 440, 330].map((hz) => tone(0.5, () => hz, VOICE)))
    const range = sungRange(pitchTrack(inChannels(sampleRate, melody, 1)))
    expect(Math.abs(cents(range?.lowestHz ?? null, 220))).toBeLessThan(5)
    expect(Math.abs(cents(range?.highestHz ?? null, 440))).toBeLessThan(5)
  })

  it('leaves out octave errors of a frame or two', () => {
    const track = at(...held(200, 30), 100, ...held(200, 30), 400, 400, ...held(300, 60), null, 90, null)
    expect(sungRange(track)).toEqual({ lowestHz: 200, highestHz: 300 })
  })

  it('is null when nothing was held', () => {
    expect(sungRange([])).toBeNull()
    expect(sungRange(at(null, 200, 400, 200, null, 300, 300, 300, null))).toBeNull()
  })
})
