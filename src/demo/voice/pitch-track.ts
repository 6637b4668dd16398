import type { Segment } from '../song/layout'
import { phoneme } from '../song/phonemes'
import { controlRate, newTrack, smoothed } from '../song/track'

/** How long the voice takes from one note to the next, seconds; twice this from end to end. */
const portamentoSeconds = 0.045
/** The voice slides up into the first note of a phrase from this far below, cents. */
const scoopCents = 90
const scoopSeconds = 0.06
const flutterPercent = 12

const isVowel = (segment: Segment) => segment.frequencyHz !== undefined

/**
 * Fundamental frequency along the song, Hz, as a control track: notes joined by portamento, the vibrato
 * given, a scoop into each phrase, a slow wander and flutter.
 */
export function pitchTrack(
  segments: readonly Segment[],
  seconds: number,
  vibratoCents: Float64Array,
): Float64Array {
  const notes = smoothed(noteCents(segments, seconds), portamentoSeconds)
  const cents = notes.map((value, index) => value + (vibratoCents[index] ?? 0))
  addScoops(cents, segments)
  const track = cents.map((value) => 440 * 2 ** (value / 1200))
  addFlutter(track)
  return track
}

/** The written notes in cents from A4; each changes halfway through the consonants before its vowel. */
function noteCents(segments: readonly Segment[], seconds: number): Float64Array {
  const track = newTrack(seconds)
  const vowels = segments.filter(isVowel)
  let changeSeconds = 0
  vowels.forEach((vowel, index) => {
    const next = vowels[index + 1]
    const until = next ? (vowel.endSeconds + next.startSeconds) / 2 : seconds + 1
    const cents = 1200 * Math.log2((vowel.frequencyHz ?? 440) / 440)
    track.fill(cents, Math.round(changeSeconds * controlRate), Math.round(until * controlRate))
    changeSeconds = until
  })
  return track
}

function addScoops(cents: Float64Array, segments: readonly Segment[]): void {
  let phrase = -1
  for (const segment of segments) {
    if (segment.phrase === phrase || phoneme(segment.symbol).voiceDb === undefined) continue
    phrase = segment.phrase
    const first = Math.round(segment.startSeconds * controlRate)
    for (let index = 0; index < 5 * scoopSeconds * controlRate; index += 1) {
      const depth = scoopCents * Math.exp(-index / controlRate / scoopSeconds)
      cents[first + index] = (cents[first + index] ?? 0) - depth
    }
  }
}

/**
 * Flutter, the slow unsteadiness of a held voice: three sines at 12.7, 7.1 and 4.7 Hz of which each adds up
 * to `flutterPercent` / 50 per cent of the pitch. D. H. Klatt, L. C. Klatt, JASA 87(2), 1990.
 */
function addFlutter(track: Float64Array): void {
  for (let index = 0; index < track.length; index += 1) {
    const angle = (2 * Math.PI * index) / controlRate
    const waves = Math.sin(12.7 * angle) + Math.sin(7.1 * angle) + Math.sin(4.7 * angle)
    track[index] = (track[index] ?? 0) * (1 + (flutterPercent / 50 / 100) * waves)
  }
}
