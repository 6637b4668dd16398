import { describe, expect, it } from 'vitest'
import { cleanDemo } from '../../../src/demo/demo-take'
import type { Segment } from '../../../src/demo/song/layout'
import type { PhonemeSymbol } from '../../../src/demo/song/phonemes'
import { song } from '../../../src/demo/song/score'
import { sampleRate } from '../../../src/demo/song/track'
import { singCleanly } from '../../../src/demo/voice/voice'
import { centsBetween, formantsOf, noiseSpectrum, pitchAt, powerAt, rmsOf } from '../analysis'

const toFrame = (seconds: number) => Math.round(seconds * sampleRate)
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

/** A vowel held straight for 0.38 s. */
function heldVowel(symbol: PhonemeSymbol, effort: number, frequencyHz: number, seed = 1): Float64Array {
  const vowel = {
    symbol,
    startSeconds: 0,
    endSeconds: 0.38,
    phrase: 0,
    frequencyHz,
    afterSibilant: false,
  }
  return singCleanly([vowel], [{ words: '', effort, syllables: [], restBeats: 0 }], 0.38, seed).body
}

const { segments, voice } = cleanDemo()
const vowels = segments.filter(
  (segment): segment is Segment & { frequencyHz: number } => 'frequencyHz' in segment,
)

/** Pitch every 5 ms in a part of a vowel, as cents from its written note. */
function pitchCurve(
  vowel: { startSeconds: number; endSeconds: number; frequencyHz: number },
  from = 0.2,
  to = 0.8,
) {
  const length = vowel.endSeconds - vowel.startSeconds
  const cents: number[] = []
  for (let t = vowel.startSeconds + from * length; t < vowel.startSeconds + to * length; t += 0.005) {
    cents.push(centsBetween(vowel.frequencyHz, pitchAt(voice.body, toFrame(t), sampleRate)))
  }
  return cents
}

/** The sine that takes most out of a curve of one value every 5 ms. */
function strongestWave(curve: readonly number[]) {
  const centre = mean(curve)
  let best = { rateHz: 0, extent: 0 }
  for (let rateHz = 3; rateHz < 10; rateHz += 0.05) {
    const angle = (i: number) => 2 * Math.PI * rateHz * 0.005 * i
    const even = mean(curve.map((cents, i) => (cents - centre) * Math.cos(angle(i))))
    const odd = mean(curve.map((cents, i) => (cents - centre) * Math.sin(angle(i))))
    const extent = 2 * Math.hypot(even, odd)
    if (extent > best.extent) best = { rateHz, extent }
  }
  return best
}

/** Level of an octave of `samples`, dB, from every third frame of 85 ms. */
function octaveDb(samples: Float64Array, centreHz: number): number {
  const frame = 4096
  const stepHz = Math.max(sampleRate / frame, centreHz / 60)
  let power = 0
  for (let from = 0; from + frame <= samples.length; from += 3 * frame) {
    for (let f = centreHz * Math.SQRT1_2; f < centreHz * Math.SQRT2; f += stepHz) {
      power += powerAt(samples, from, from + frame, f, sampleRate) * stepHz
    }
  }
  return 10 * Math.log10(power)
}

/** Power of the body of the voice between 5 and 7 kHz. */
function powerAround6kHz(from: number, to: number): number {
  let power = 0
  for (let f = 5000; f <= 7000; f += 50) power += powerAt(voice.body, from, to, f, sampleRate)
  return power
}

describe('the clean voice', () => {
  // Women's means of G. E. Peterson, H. L. Barney, "Control Methods Used in a Study of the Vowels", JASA 24(2),
  // 1952, Table II.
  it.each([
    ['i', 310, 2790, 3310],
    ['I', 430, 2480, 3070],
    ['E', 610, 2330, 2990],
    ['ae', 860, 2050, 2850],
    ['A', 850, 1220, 2810],
    ['O', 590, 920, 2710],
    ['V', 760, 1400, 2780],
  ] as const)('sings %s with the published formants', (symbol, f1, f2, f3) => {
    // At so low a pitch the harmonics lie close enough to show the formants.
    // Four takes, since formants drift by up to 3 per cent and are seen through the harmonics of each pitch.
    const takes = [48, 50, 52, 54].map((pitchHz, seed) =>
      formantsOf(heldVowel(symbol, 0.5, pitchHz, seed), toFrame(0.1), toFrame(0.3), sampleRate),
    )
    const found = [0, 1, 2].map((index) => mean(takes.map((take) => take[index] ?? 0)))
    ;[f1, f2, f3].forEach((formantHz, index) => {
      // Half the distance of its harmonics, or 4 per cent, is how finely so low a voice shows its formants.
      const tolerance = Math.max(25, 0.04 * formantHz)
      expect(Math.abs((found[index] ?? 0) - formantHz), `${found.join(' ')}`).toBeLessThan(tolerance)
    })
  })

  it('gets brighter with effort', () => {
    // Ten dB more of voice bring 12 to 15 dB more around 3 kHz: T. F. Cleveland, J. Sundberg, as cited in
    // J. Sundberg, "Level and center frequency of the singer's formant", J. Voice 15(2), 2001. The scale of the
    // effort here is our own, so only the direction and a size that can be heard are asked for.
    const brightness = (effort: number) => {
      const sound = heldVowel('E', effort, 330)
      return octaveDb(sound, 2500) - octaveDb(sound, 315)
    }
    expect(brightness(0.5)).toBeGreaterThan(brightness(0) + 2)
    expect(brightness(1)).toBeGreaterThan(brightness(0.5) + 2)
  })

  it('closes each t and then lets it burst', () => {
    for (const { startSeconds, endSeconds } of segments.filter(({ symbol }) => symbol === 't')) {
      const share = (part: number) => toFrame(startSeconds + part * (endSeconds - startSeconds))
      const closed = powerAround6kHz(share(0.25), share(0.5))
      const burst = powerAround6kHz(share(0.55), share(0.8))
      expect(10 * Math.log10(burst / closed), `t at ${startSeconds} s`).toBeGreaterThan(15)
    }
  })

  it('is in tune: the vowels are within 30 cents of their notes on average', () => {
    const errors = vowels.map((vowel) => Math.abs(mean(pitchCurve(vowel))))
    expect(mean(errors)).toBeLessThan(30)
  })

  it('has vibrato on its long notes, of published rate and extent', () => {
    // E. Prame, JASA 96(4), 1994: 6.0 Hz on average; JASA 102(1), 1997: +-34 to +-123 cents.
    const long = vowels.filter(({ startSeconds, endSeconds }) => endSeconds - startSeconds > 0.75)
    expect(long.length).toBeGreaterThan(4)
    for (const vowel of long) {
      const length = vowel.endSeconds - vowel.startSeconds
      const curve = pitchCurve(vowel, 0.5 / length, (length - 0.06) / length)
      const { rateHz, extent } = strongestWave(curve)
      expect(Math.abs(rateHz / 6 - 1), `${vowel.symbol}: ${rateHz} Hz`).toBeLessThan(0.15)
      expect(extent, vowel.symbol).toBeGreaterThan(34)
      expect(extent, vowel.symbol).toBeLessThan(123)
    }
  })

  it('holds s at the published level against the vowels, peak near 6.8 kHz', () => {
    // Jongman, Wayland, Wong 2000: 11.0 dB below the vowel, peak 6.8 kHz for women and 6.1 kHz for men.
    const middles = segments
      .filter(({ symbol }) => symbol === 's')
      .map(({ startSeconds, endSeconds }) => {
        const centre = toFrame((startSeconds + endSeconds) / 2)
        return voice.sibilance.slice(centre - 960, centre + 960)
      })
    const all = Float64Array.from(middles.flatMap((middle) => [...middle]))
    expect(20 * Math.log10(rmsOf(all, 0, all.length))).toBeCloseTo(-11, 0)
    const { peakHz } = noiseSpectrum(all, sampleRate)
    expect(peakHz).toBeGreaterThan(6100)
    expect(peakHz).toBeLessThan(7500)
  })

  it('sings its phrases at one level', () => {
    for (const phrase of song.phrases.keys()) {
      const own = vowels.filter((vowel) => vowel.phrase === phrase)
      const power = own.map(({ startSeconds, endSeconds }) => {
        return (
          rmsOf(voice.body, toFrame(startSeconds), toFrame(endSeconds)) ** 2 * (endSeconds - startSeconds)
        )
      })
      const seconds = own.map(({ startSeconds, endSeconds }) => endSeconds - startSeconds)
      expect(10 * Math.log10(mean(power) / mean(seconds))).toBeCloseTo(0, 0)
    }
  })

  it('has a long-term spectrum like that of women', () => {
    // D. Byrne et al., "An international comparison of long-term average speech spectra", JASA 96(4), 1994,
    // Table II, women, dB in thirds of an octave from 250 Hz to 6.3 kHz. That is the speech of many: one song of
    // ten notes and fewer vowels is compared in whole octaves, to 4 dB.
    const thirds = [60.9, 58.1, 61.7, 61.7, 60.4, 58, 54.3, 52.3, 51.7, 48.8, 47.3, 46.7, 45.3, 44.6, 45.2]
    const sung = voice.body.map((sample, i) => sample + (voice.sibilance[i] ?? 0))
    const errors = [315, 630, 1250, 2500, 5000].map((centreHz, octave) => {
      const power = thirds
        .slice(3 * octave, 3 * octave + 3)
        .reduce((sum, level) => sum + 10 ** (level / 10), 0)
      return octaveDb(sung, centreHz) - 10 * Math.log10(power)
    })
    errors.forEach((error, octave) => {
      expect(Math.abs(error - mean(errors)), `octave ${octave} of ${errors.join(' ')}`).toBeLessThan(4)
    })
  })
})
