import { expect, test } from '@playwright/test'
import { type BandSettings, magnitudeDb } from '../src/core'

// Outside source: the browser's own BiquadFilterNode.getFrequencyResponse, which the Web Audio API specifies by
// the formulas of the "Audio EQ Cookbook". Its Q of low-pass and high-pass is in dB; its shelves have a slope of 1.
const SAMPLE_RATE = 48_000
const TOLERANCE_DB = 0.001

const FREQUENCIES_HZ = Array.from({ length: 400 }, (_, i) => 20 * 1000 ** (i / 399))

const BAND: BandSettings = {
  on: true,
  shape: 'bell',
  frequencyHz: 1000,
  gainDb: 0,
  q: Math.SQRT1_2,
  slopeDbPerOctave: 12,
}

interface Case {
  readonly band: BandSettings
  readonly native: { type: BiquadFilterType; frequency: number; Q: number; gain: number }
}

const cases: Case[] = [
  ...[60, 170, 1000, 9000].flatMap((frequencyHz) =>
    [0.5, Math.SQRT1_2, 2].flatMap((q) => [
      passCase('high-pass', 'highpass', frequencyHz, q),
      passCase('low-pass', 'lowpass', frequencyHz, q),
    ]),
  ),
  ...[120, 3000, 12_000].flatMap((frequencyHz) =>
    [-12, -3, 4, 18].flatMap((gainDb) => [
      gainCase('bell', 'peaking', frequencyHz, gainDb, 1.4),
      gainCase('low-shelf', 'lowshelf', frequencyHz, gainDb, Math.SQRT1_2),
      gainCase('high-shelf', 'highshelf', frequencyHz, gainDb, Math.SQRT1_2),
    ]),
  ),
  ...[50, 6500].map((frequencyHz) => gainCase('notch', 'notch', frequencyHz, 0, 10)),
]

function passCase(
  shape: BandSettings['shape'],
  type: BiquadFilterType,
  frequencyHz: number,
  q: number,
): Case {
  return {
    band: { ...BAND, shape, frequencyHz, q },
    native: { type, frequency: frequencyHz, Q: 20 * Math.log10(q), gain: 0 },
  }
}

function gainCase(
  shape: BandSettings['shape'],
  type: BiquadFilterType,
  frequencyHz: number,
  gainDb: number,
  q: number,
): Case {
  return {
    band: { ...BAND, shape, frequencyHz, gainDb, q },
    native: { type, frequency: frequencyHz, Q: q, gain: gainDb },
  }
}

test('bilinear bands have the response of the native biquad within 0.001 dB from 20 Hz to 20 kHz', async ({
  page,
}) => {
  const responses = await page.evaluate(
    ({ natives, frequenciesHz, sampleRate }) => {
      const context = new OfflineAudioContext(1, 1, sampleRate)
      return natives.map(({ type, frequency, Q, gain }) => {
        const node = new BiquadFilterNode(context, { type, frequency, Q, gain })
        const magnitude = new Float32Array(frequenciesHz.length)
        node.getFrequencyResponse(
          Float32Array.from(frequenciesHz),
          magnitude,
          new Float32Array(frequenciesHz.length),
        )
        return Array.from(magnitude, (m) => 20 * Math.log10(m))
      })
    },
    { natives: cases.map((c) => c.native), frequenciesHz: FREQUENCIES_HZ, sampleRate: SAMPLE_RATE },
  )
  // The native node takes its frequencies, and keeps its settings, in 32 bits: ours are rounded likewise.
  const rounded = Float32Array.from(FREQUENCIES_HZ)
  cases.forEach(({ band }, index) => {
    const settings = {
      ...band,
      frequencyHz: Math.fround(band.frequencyHz),
      gainDb: Math.fround(band.gainDb),
      q: Math.fround(band.q),
    }
    const ours = magnitudeDb(settings, rounded, SAMPLE_RATE, 'bilinear')
    const native = responses[index] ?? []
    // 32-bit magnitudes cannot tell values far below full scale apart to 0.001 dB: near a notch's centre.
    const errors = Array.from(ours, (db, i) => (db < -60 ? 0 : Math.abs(db - (native[i] ?? Number.NaN))))
    const { shape, frequencyHz, gainDb, q } = band
    expect(Math.max(...errors), `${shape} ${frequencyHz} Hz ${gainDb} dB q ${q}`).toBeLessThan(TOLERANCE_DB)
  })
})
