import { describe, expect, it } from 'vitest'
import { seededRandom } from '../../src/core/dsp/numeric/random'
import { cleanDemo } from '../../src/demo/demo-take'
import type { PhonemeSymbol } from '../../src/demo/song/phonemes'
import { controlRate, sampleRate } from '../../src/demo/song/track'
import { formantTracks } from '../../src/demo/voice/formant-tracks'
import { vibratoTracks } from '../../src/demo/voice/vibrato'
import { singCleanly } from '../../src/demo/voice/voice'
import { powerAt } from './analysis'

// What tells a person from a machine. Bounds that name no source were measured on recorded voices.

const { segments, voice } = cleanDemo()
const toFrame = (seconds: number) => Math.round(seconds * sampleRate)
const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[values.length >> 1] ?? 0

/** Level of the hiss every 1 ms, dB, over 10 ms each. */
function hissLevels(fromSeconds: number, toSeconds: number): number[] {
  const levels: number[] = []
  for (let t = fromSeconds; t < toSeconds; t += 0.001) {
    let power = 1e-12
    for (let i = toFrame(t - 0.005); i < toFrame(t + 0.005); i += 1) power += (voice.sibilance[i] ?? 0) ** 2
    levels.push(10 * Math.log10(power))
  }
  return levels
}

/** Length above -6 dB of its middle and rise from -20 to -6 dB, ms, of the hiss around a label. */
function swellOf({ startSeconds, endSeconds }: { startSeconds: number; endSeconds: number }) {
  const lead = 0.08
  const levels = hissLevels(startSeconds - lead, endSeconds + lead)
  const middle = Math.round(((endSeconds - startSeconds) / 2 + lead) * 1000)
  const top = median(levels.slice(middle - 15, middle + 15))
  const before = (from: number, db: number) => {
    let i = from
    while (i > 0 && (levels[i] ?? 0) > top + db) i -= 1
    return i
  }
  const start = before(middle, -6)
  const end = levels.findIndex((level, i) => i > middle && level < top - 6)
  return { startMs: start - lead * 1000, lengthMs: end - start, riseMs: start - before(start, -20) }
}

describe('the sibilants', () => {
  // One S after another has no level of its own between them.
  const alone = segments.filter(({ symbol }, i) => {
    const kindBeside = [segments[i - 1]?.symbol, segments[i + 1]?.symbol]
    return symbol === 's' && !kindBeside.some((other) => other === 'z' || other === 'sh')
  })
  const swells = alone.map(swellOf)

  // A noise is loud and soft by turns: that is how finely 10 ms of it show where a ramp of up to 95 ms passes -6 dB.
  const startToleranceMs = 30
  const lengthToleranceMs = 50

  it('differ in length by more than a third, each where its label says and as long', () => {
    const lengths = swells.map(({ lengthMs }) => lengthMs)
    expect(Math.max(...lengths) / Math.min(...lengths)).toBeGreaterThan(4 / 3)
    swells.forEach(({ startMs, lengthMs }, i) => {
      const { startSeconds = 0, endSeconds = 0 } = alone[i] ?? {}
      expect(Math.abs(startMs), `start of s at ${startSeconds} s`).toBeLessThan(startToleranceMs)
      expect(Math.abs(lengthMs - 1000 * (endSeconds - startSeconds)), `s at ${startSeconds} s`).toBeLessThan(
        lengthToleranceMs,
      )
    })
  })

  it('rise in 10 to 50 ms, half of them in more than 15', () => {
    const rises = swells.map(({ riseMs }) => riseMs)
    expect(Math.min(...rises), rises.join(' ')).toBeGreaterThanOrEqual(10)
    expect(Math.max(...rises), rises.join(' ')).toBeLessThanOrEqual(50)
    expect(median(rises), rises.join(' ')).toBeGreaterThan(15)
  })

  it('have a lower edge that falls towards the vowel', () => {
    /** Where the tenth part of the power up to 11 kHz lies below, Hz. */
    const edgeHz = (from: number, to: number) => {
      const powers = Array.from({ length: 220 }, (_, k) =>
        powerAt(voice.sibilance, toFrame(from), toFrame(to), 50 * k, sampleRate),
      )
      const total = powers.reduce((sum, power) => sum + power, 0)
      let below = 0
      return (
        50 *
        powers.findIndex((power) => {
          below += power
          return below > total / 10
        })
      )
    }
    // Between a stop or a pause and a vowel.
    const opening = alone.filter(({ endSeconds }) => {
      const after = segments.find(({ startSeconds }) => startSeconds === endSeconds)
      return after?.frequencyHz !== undefined
    })
    const falls = opening.map(({ startSeconds: start, endSeconds: end }) => {
      const third = (end - start) / 3
      return edgeHz(start, start + third) - edgeHz(end - third, end)
    })
    expect(falls.length).toBeGreaterThan(3)
    expect(median(falls), falls.join(' ')).toBeGreaterThan(150)
  })
})

describe('the mouth', () => {
  const sound = (symbol: PhonemeSymbol, startSeconds: number, endSeconds: number) => ({
    symbol,
    startSeconds,
    endSeconds,
    phrase: 0,
    afterSibilant: false,
  })

  it('is on its way for 60 to 120 ms of a vowel behind a consonant', () => {
    const [, second] = formantTracks([sound('d', 0, 0.2), sound('A', 0.2, 1)], 1, seededRandom(4))
    const at = (seconds: number) => second[Math.round(seconds * controlRate)] ?? 0
    const [start, end] = [at(0.2), at(0.35)]
    const arrived = second.findIndex(
      (hz, i) => i > 0.2 * controlRate && Math.abs(hz - end) < 0.08 * (start - end),
    )
    // From well towards the locus of the gums, 2000 Hz, to the 1220 Hz of the vowel.
    expect(start).toBeGreaterThan(1450)
    expect(arrived - 200).toBeGreaterThan(60)
    expect(arrived - 200).toBeLessThan(120)
  })

  it('is never quite still: formants drift by 1 to 3 per cent through a held vowel', () => {
    const tracks = formantTracks([sound('A', 0, 2)], 2, seededRandom(4))
    tracks.forEach((track, formant) => {
      const held = track.slice(0.2 * controlRate, 1.8 * controlRate)
      const usual = [850, 1220, 2810][formant] ?? 0
      const spread = Math.max(...held) / Math.min(...held) - 1
      expect(spread).toBeGreaterThan(0.01)
      expect(Math.max(...held.map((hz) => Math.abs(hz / usual - 1)))).toBeLessThanOrEqual(0.0301)
    })
  })
})

describe('the voice', () => {
  it.each([0.2, 0.5, 1])(
    'has breath in its top: harmonics 2 to 10 dB above noise from 3.5 to 6 kHz, effort %f',
    (effort) => {
      const pitchHz = 330
      const held = {
        symbol: 'E',
        startSeconds: 0,
        endSeconds: 0.38,
        phrase: 0,
        afterSibilant: false,
      } as const
      const phrase = { words: '', effort, syllables: [], restBeats: 0 }
      const { body } = singCleanly([{ ...held, frequencyHz: pitchHz }], [phrase], 0.38, 1)
      let harmonic = 0
      let between = 0
      for (let from = 0.1; from < 0.3; from += 0.05) {
        for (let f = 3500; f < 6000; f += 10) {
          const power = powerAt(body, toFrame(from), toFrame(from + 0.05), f, sampleRate)
          const share = (f / pitchHz) % 1
          if (share > 0.25 && share < 0.75) between += power
          else harmonic += power
        }
      }
      // As much noise lies beneath the harmonics as between them.
      const ratioDb = 10 * Math.log10((harmonic - between) / (2 * between))
      expect(ratioDb).toBeGreaterThan(2)
      expect(ratioDb).toBeLessThan(10)
    },
  )

  it('has a valley from 4.5 to 6.5 kHz and a formant near 8', () => {
    const levelAround = (fromHz: number, toHz: number) => {
      let power = 0
      let count = 0
      for (const { startSeconds, endSeconds, frequencyHz } of segments) {
        if (frequencyHz === undefined || endSeconds - startSeconds < 0.5) continue
        for (let f = fromHz; f < toHz; f += 40) {
          power += powerAt(
            voice.body,
            toFrame(startSeconds + 0.1),
            toFrame(startSeconds + 0.4),
            f,
            sampleRate,
          )
          count += 1
        }
      }
      return 10 * Math.log10(power / count)
    }
    expect(levelAround(7500, 8500)).toBeGreaterThan(levelAround(4500, 6500) - 3)
    expect(levelAround(3500, 4300)).toBeGreaterThan(levelAround(4500, 6500) + 6)
  })

  it('starts its vibrato at different moments of its long notes, 0.1 to 0.4 s in, and swings by 1 to 2 dB', () => {
    const { cents, gain } = vibratoTracks(segments, 25, seededRandom(101))
    const long = segments.filter(
      ({ frequencyHz, startSeconds, endSeconds }) =>
        frequencyHz !== undefined && endSeconds - startSeconds > 0.75,
    )
    const onsets = long.map(({ startSeconds }) => {
      const first = Math.round(startSeconds * controlRate)
      return (cents.findIndex((value, i) => i >= first && value !== 0) - first) / controlRate
    })
    expect(Math.min(...onsets)).toBeGreaterThanOrEqual(0.1)
    expect(Math.max(...onsets)).toBeLessThan(0.41)
    expect(Math.max(...onsets) - Math.min(...onsets)).toBeGreaterThan(0.1)
    for (const { startSeconds, endSeconds } of long) {
      const gains = [...gain.subarray(startSeconds * controlRate, endSeconds * controlRate)]
      const swingDb = 20 * Math.log10(Math.max(...gains) / Math.min(...gains))
      expect(swingDb).toBeGreaterThan(0.9)
      expect(swingDb).toBeLessThan(2)
    }
  })
})
