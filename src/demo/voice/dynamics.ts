import { dbToGain } from '../../core'
import type { Segment } from '../song/layout'
import { controlRate, newTrack } from '../song/track'

// How a held note breathes. Common practice, no source; the figures are our own.
const swellShare = 0.35
const swellDb = 3
const fadeDb = 3
const lastFadeDb = 9
/** Notes shorter than this swell and fade by less. */
const fullShapeSeconds = 0.5

/** Gain along the song that shapes each vowel: a swell, a fade, and a longer fade at the end of a phrase. */
export function dynamicsTrack(segments: readonly Segment[], seconds: number): Float64Array {
  const track = newTrack(seconds).fill(1)
  const vowels = segments.filter(({ frequencyHz }) => frequencyHz !== undefined)
  vowels.forEach(({ startSeconds, endSeconds, phrase }, index) => {
    const endsPhrase = vowels[index + 1]?.phrase !== phrase
    const shape = Math.min(1, (endSeconds - startSeconds) / fullShapeSeconds)
    const fall = endsPhrase ? lastFadeDb : fadeDb
    const first = Math.round(startSeconds * controlRate)
    const last = Math.round(endSeconds * controlRate)
    for (let i = first; i < last; i += 1) {
      const share = (i - first) / (last - first)
      const db =
        share < swellShare
          ? -swellDb * (1 - share / swellShare) ** 2
          : -fall * ((share - swellShare) / (1 - swellShare)) ** 2
      track[i] = dbToGain(shape * db)
    }
  })
  return track
}
