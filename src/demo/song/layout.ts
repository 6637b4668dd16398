import { between, type Random, seededRandom } from '../../core/primitives'
import { noteFrequencyHz } from './note'
import { type PhonemeSymbol, phoneme } from './phonemes'
import { beatSeconds, type Song } from './score'

/** One sound of the song at its place in time. */
export interface Segment {
  readonly symbol: PhonemeSymbol
  readonly startSeconds: number
  readonly endSeconds: number
  /** Which phrase it belongs to; a breath belongs to the phrase it is drawn for. */
  readonly phrase: number
  /** Written pitch, Hz, on vowels only. */
  readonly frequencyHz?: number
  /** A stop right after an s is released without a puff of breath. */
  readonly afterSibilant: boolean
}

/** No vowel is squeezed below this by its consonants; common practice, no source. */
const shortestVowelSeconds = 0.1
const breathSeconds = 0.4
const gapAfterBreathSeconds = 0.05

/** By how much a consonant is longer or shorter than usual: hisses by up to this share, the others by half of it. */
const lengthSpread = 0.3

/** A consonant and how long it wants to be. */
interface Consonant {
  readonly symbol: PhonemeSymbol
  readonly seconds: number
}

const totalSeconds = (consonants: readonly Consonant[]) =>
  consonants.reduce((sum, { seconds }) => sum + seconds, 0)

/**
 * Places every sound of `song` in time: vowels start on their beats, the consonants before a vowel borrow
 * their time from the vowel before, and a breath is drawn before each phrase. The segments fill the song from
 * 0 to its end without gaps. Consonants vary in length; the same seed gives the same lengths.
 */
export function layOut(song: Song, seed: number): Segment[] {
  const random = seededRandom(seed)
  const beat = beatSeconds(song)
  const segments: Segment[] = []
  let now = 0
  const add = (symbol: PhonemeSymbol, until: number, phrase: number, frequencyHz?: number) => {
    if (until <= now) return
    const previous = segments.at(-1)
    const afterSibilant = previous !== undefined && phoneme(previous.symbol).kind === 'sibilant'
    const place = { symbol, startSeconds: now, endSeconds: until, phrase, afterSibilant }
    segments.push(frequencyHz === undefined ? place : { ...place, frequencyHz })
    now = until
  }
  const addConsonants = (consonants: readonly Consonant[], stretch: number, phrase: number) => {
    for (const { symbol, seconds } of consonants) add(symbol, now + seconds * stretch, phrase)
  }

  let noteStart = song.leadInBeats * beat
  song.phrases.forEach((phrase, index) => {
    const syllables = phrase.syllables.map((syllable) => ({
      ...syllable,
      onset: syllable.onset.map((symbol) => drawLength(symbol, random)),
      coda: syllable.coda.map((symbol) => drawLength(symbol, random)),
    }))
    const onset = syllables[0]?.onset ?? []
    const firstSound = noteStart - totalSeconds(onset)
    const breathEnd = firstSound - gapAfterBreathSeconds
    add('silence', Math.max(now, breathEnd - breathSeconds), Math.max(0, index - 1))
    add('breath', breathEnd, index)
    add('silence', firstSound, index)
    addConsonants(onset, 1, index)
    syllables.forEach(({ vowel, note, beats, coda }, position) => {
      const end = noteStart + beats * beat
      const nextOnset = syllables[position + 1]?.onset ?? []
      const wanted = totalSeconds(coda) + totalSeconds(nextOnset)
      const room = end - noteStart - shortestVowelSeconds
      const stretch = wanted > room ? room / wanted : 1
      add(vowel, end - wanted * stretch, index, noteFrequencyHz(note))
      addConsonants(coda, stretch, index)
      addConsonants(nextOnset, stretch, index)
      noteStart = end
    })
    noteStart += phrase.restBeats * beat
  })
  add('silence', song.durationSeconds, song.phrases.length - 1)
  return segments
}

function drawLength(symbol: PhonemeSymbol, random: Random): Consonant {
  const { kind, seconds = 0 } = phoneme(symbol)
  const spread = kind === 'sibilant' || kind === 'fricative' ? lengthSpread : lengthSpread / 2
  return { symbol, seconds: seconds * between(random, [1 - spread, 1 + spread]) }
}
