import { describe, expect, it } from 'vitest'
import { measure } from '../../src/core'
import { whiteNoise } from '../../src/core/dsp/numeric/random'
import { demoTake, type FaultKind, type FaultLabel } from '../../src/demo'
import { cleanDemo } from '../../src/demo/demo-take'
import { spoil } from '../../src/demo/faults/faults'
import { bandDb, lowPassed, powerAt, rmsOf } from './analysis'

const { vocal, labels } = demoTake()
const [take = new Float32Array()] = vocal.channels
const rate = vocal.sampleRate
const { voice } = cleanDemo()
const db = (gain: number) => 20 * Math.log10(gain)
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length
const frames = (from: number, to: number) => [Math.round(from * rate), Math.round(to * rate)] as const

/** The label of a fault there is once. */
function only(kind: FaultKind): FaultLabel {
  const label = labels.faults.find((fault) => fault.kind === kind)
  if (!label) throw new RangeError(`no ${kind}`)
  return label
}

/** RMS of the vowels that start in a stretch. */
function vowelRms(samples: ArrayLike<number>, startSeconds: number, endSeconds: number): number {
  const vowels = labels.phonemes.filter(
    (label) =>
      label.kind === 'vowel' && label.startSeconds >= startSeconds && label.startSeconds < endSeconds,
  )
  const parts = vowels.map((label) => frames(label.startSeconds, label.endSeconds))
  const power = parts.reduce((sum, [from, to]) => sum + rmsOf(samples, from, to) ** 2 * (to - from), 0)
  return Math.sqrt(power / parts.reduce((sum, [from, to]) => sum + to - from, 0))
}

const phraseRms = (at: number) => {
  const phrase = labels.phrases.find(({ startSeconds, endSeconds }) => at >= startSeconds && at < endSeconds)
  if (!phrase) throw new RangeError(`no phrase at ${at} s`)
  return (samples: ArrayLike<number>) => vowelRms(samples, phrase.startSeconds, phrase.endSeconds)
}

/** Each sibilant against the vowels of its phrase, dB, on average. */
function sibilantsDb(samples: ArrayLike<number>): number {
  const sibilants = labels.phonemes.filter(({ kind }) => kind === 'sibilant')
  return mean(
    sibilants.map(({ startSeconds, endSeconds }) =>
      db(rmsOf(samples, ...frames(startSeconds, endSeconds)) / phraseRms(startSeconds)(samples)),
    ),
  )
}

// White noise for 4 s and silence for 2, spoilt as the voice is.
const burst = whiteNoise(6 * rate, 3).fill(0, 4 * rate)
const held = { symbol: 'A', startSeconds: 0, endSeconds: 4, phrase: 2, afterSibilant: false } as const
const spoilt = spoil(
  { body: burst, sibilance: new Float64Array(burst.length) },
  [
    { ...held, frequencyHz: 220 },
    { ...held, symbol: 'silence', startSeconds: 4, endSeconds: 6 },
  ],
  1,
)
/** What is done to a sixth of an octave of the noise, dB against what is done at 2 kHz. */
const gainDb = (frequencyHz: number) => spoiltDb(frequencyHz) - spoiltDb(2000)
function spoiltDb(centreHz: number): number {
  const band = [centreHz * 2 ** (-1 / 12), centreHz * 2 ** (1 / 12)] as const
  const stepHz = (band[1] - band[0]) / 60
  const level = (samples: ArrayLike<number>) => bandDb(samples, [rate, 3 * rate], band, stepHz, rate)
  return level(spoilt) - level(burst)
}

// A cardioid at r metres from a point source rises by 10 log (1 + (c / (4 pi r f))^2): see proximity.test.ts.
const riseDb = (centimetres: number, frequencyHz: number) =>
  10 * Math.log10(1 + (343 / (4 * Math.PI * (centimetres / 100) * frequencyHz)) ** 2)
const riseFrom2kDb = (centimetres: number, frequencyHz: number) =>
  riseDb(centimetres, frequencyHz) - riseDb(centimetres, 2000)

/**
 * How each kind of fault is measured, and how closely: what the measure itself is unsure by. The echoes of the room
 * ripple the spectrum by about 1 dB.
 */
const measures: Record<FaultKind, { tolerance: number; found: (label: FaultLabel) => number }> = {
  rumble: { tolerance: 1.5, found: () => bandDb(take, frames(0, 0.8), [5, 95], 1.25, rate) },
  'room-noise': { tolerance: 1.5, found: () => bandDb(take, frames(0, 0.8), [110, 20_000], 25, rate) },
  proximity: {
    tolerance: 1,
    // The distance at which the formula rises as much as was measured, from 1 to 30 cm.
    found: () => {
      const measured = gainDb(120)
      const distances = Array.from({ length: 300 }, (_, i) => (i + 10) / 10)
      const error = (centimetres: number) => Math.abs(riseFrom2kDb(centimetres, 120) - measured)
      return distances.reduce((best, distance) => (error(distance) < error(best) ? distance : best))
    },
  },
  'box-resonance': {
    tolerance: 1,
    found: ({ frequencyHz = 0 }) => gainDb(frequencyHz) - riseFrom2kDb(only('proximity').amount, frequencyHz),
  },
  // A shelf has half its gain at its frequency.
  'dull-top': { tolerance: 1, found: ({ frequencyHz = 0 }) => 2 * gainDb(frequencyHz) },
  'sharp-sibilance': { tolerance: 0.5, found: () => sibilantsDb(take) - sibilantsDb(sung) },
  'uneven-level': {
    tolerance: 0.3,
    found: ({ startSeconds = 0, endSeconds = 0 }) => {
      const levels = labels.phrases.map((phrase) => vowelRms(take, phrase.startSeconds, phrase.endSeconds))
      return db(vowelRms(take, startSeconds, endSeconds) / Math.max(...levels))
    },
  },
  'plosive-burst': {
    // The rumble beneath it, and the ends of the low-pass.
    tolerance: 0.5,
    found: ({ startSeconds = 0 }) => {
      const low = lowPassed(take, ...frames(startSeconds, startSeconds + 0.012), 200, rate)
      const peak = low.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)
      return db(peak / phraseRms(startSeconds)(take))
    },
  },
  reverberation: {
    tolerance: 1.5,
    // Until the first echo fails to come, the room is as loud behind a steady noise as while it lasted.
    found: () => {
      const level = (part: readonly [number, number]) => bandDb(spoilt, part, [300, 10_000], 20, rate)
      return level(frames(4.002, 4.026)) - level(frames(1, 4))
    },
  },
}
const sung = voice.body.map((sample, i) => sample + (voice.sibilance[i] ?? 0))

describe('the labels of the faults', () => {
  it('name every kind', () => {
    expect(new Set(labels.faults.map(({ kind }) => kind))).toEqual(new Set(Object.keys(measures)))
  })

  it.each(labels.faults)('say what is measured: $kind, $amount $unit', (label) => {
    const { tolerance, found } = measures[label.kind]
    expect(Math.abs(found(label) - label.amount), `${found(label)} ${label.unit}`).toBeLessThan(tolerance)
  })
})

describe('the faults', () => {
  it('leave the noise floor of the take at the rumble and the noise of the room together', () => {
    const together =
      10 * Math.log10(10 ** (only('rumble').amount / 10) + 10 ** (only('room-noise').amount / 10))
    // The floor is that of the quietest windows of 50 ms, and rumble swells and ebbs from one to the next.
    expect(Math.abs((measure(vocal).noiseFloorDbfs ?? 0) - together)).toBeLessThan(3)
  })

  it('make a room that is heard: it rings on 8 dB above its noise behind the last word', () => {
    const end = labels.phrases.at(-1)?.endSeconds ?? 0
    const tail = bandDb(take, frames(end + 0.02, end + 0.06), [300, 8000], 25, rate)
    const noise = bandDb(take, frames(end + 0.5, end + 0.9), [300, 8000], 25, rate)
    expect(tail - noise).toBeGreaterThan(8)
  })

  it('burst below the voice after every p, and nowhere else', () => {
    const bursts = labels.faults.filter(({ kind }) => kind === 'plosive-burst')
    expect(bursts.length).toBe(labels.phonemes.filter(({ symbol }) => symbol === 'p').length)
    for (const { startSeconds = 0, endSeconds = 0, frequencyHz = 0 } of bursts) {
      const length = endSeconds - startSeconds
      const power = (from: number) => powerAt(take, ...frames(from, from + length), frequencyHz, rate)
      expect(10 * Math.log10(power(startSeconds) / power(startSeconds - length))).toBeGreaterThan(10)
    }
  })
})
