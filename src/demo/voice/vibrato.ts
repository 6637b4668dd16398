import { dbToGain } from '../../core'
import { between, type Random } from '../../core/primitives'
import type { Segment } from '../song/layout'
import { controlRate, newTrack } from '../song/track'

/**
 * The rate is close to the mean of 6.0 Hz of E. Prame, "Measurements of the vibrato rate of ten singers", JASA
 * 96(4), 1994; the extent lies in the range of +-34 to +-123 cents of E. Prame, "Vibrato extent and intonation in
 * professional Western lyric singing", JASA 102(1), 1997; the level ripples by 1 to 3 dB, of which harmonics that
 * sweep across formants make some by themselves (R. Maher, J. Beauchamp, "An investigation of vocal vibrato for
 * synthesis", Applied Acoustics 30, 1990). The delay is common practice, no source.
 */
const rateHz = [5.6, 6] as const
const extentCents = [51, 69] as const
const rippleDb = [1, 2] as const
const delaySeconds = [0.1, 0.4] as const
const riseSeconds = 0.25
const fadeSeconds = 0.06
/** Shorter vowels are sung straight. */
const shortestVowelSeconds = 0.4

/** Control tracks: what vibrato adds to the pitch, and the gain by which the level swings with it. */
export interface Vibrato {
  readonly cents: Float64Array
  readonly gain: Float64Array
}

/** Vibrato on every long vowel, each with an onset, rate, extent and ripple of its own. */
export function vibratoTracks(segments: readonly Segment[], seconds: number, random: Random): Vibrato {
  const cents = newTrack(seconds)
  const gain = newTrack(seconds).fill(1)
  for (const { startSeconds, endSeconds, frequencyHz } of segments) {
    if (frequencyHz === undefined || endSeconds - startSeconds < shortestVowelSeconds) continue
    const rate = between(random, rateHz)
    const extent = between(random, extentCents)
    const ripple = between(random, rippleDb)
    const first = Math.round((startSeconds + between(random, delaySeconds)) * controlRate)
    // Over the end of the vowel by a little, so that the wave fades out and is not cut.
    const last = Math.min(cents.length - 1, Math.round((endSeconds + fadeSeconds / 2) * controlRate))
    for (let index = first; index < last; index += 1) {
      const since = (index - first) / controlRate
      const edge = Math.min(1, since / riseSeconds, (last - index) / controlRate / fadeSeconds)
      const wave = edge * Math.sin(2 * Math.PI * rate * since)
      cents[index] = extent * wave
      gain[index] = dbToGain((ripple / 2) * wave)
    }
  }
  return { cents, gain }
}
