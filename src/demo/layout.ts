import { noteFrequencyHz } from './note'
import { type PhonemeSymbol, phoneme } from './phonemes'
import { beatSeconds, type Phrase, type Song, type Syllable } from './score'

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

const totalSeconds = (symbols: readonly PhonemeSymbol[]) =>
  symbols.reduce((sum, symbol) => sum + (phoneme(symbol).seconds ?? 0), 0)

/**
 * Places every sound of `song` in time: vowels start on their beats, the consonants before a vowel borrow
 * their time from the vowel before, and a breath is drawn before each phrase. The segments fill the song from
 * 0 to its end without gaps.
 */
export function layOut(song: Song): Segment[] {
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
  const addConsonants = (symbols: readonly PhonemeSymbol[], stretch: number, phrase: number) => {
    for (const symbol of symbols) add(symbol, now + (phoneme(symbol).seconds ?? 0) * stretch, phrase)
  }

  let noteStart = song.leadInBeats * beat
  song.phrases.forEach((phrase, index) => {
    const first = phrase.syllables[0]
    const firstSound = noteStart - totalSeconds(first?.onset ?? [])
    const breathEnd = firstSound - gapAfterBreathSeconds
    add('silence', Math.max(now, breathEnd - breathSeconds), Math.max(0, index - 1))
    add('breath', breathEnd, index)
    add('silence', firstSound, index)
    addConsonants(first?.onset ?? [], 1, index)
    noteStart = addSyllables(phrase, index)
  })
  add('silence', song.durationSeconds, song.phrases.length - 1)
  return segments

  function addSyllables(phrase: Phrase, index: number): number {
    let start = noteStart
    phrase.syllables.forEach((syllable: Syllable, position) => {
      const end = start + syllable.beats * beat
      const nextOnset = phrase.syllables[position + 1]?.onset ?? []
      const wanted = totalSeconds(syllable.coda) + totalSeconds(nextOnset)
      const room = end - start - shortestVowelSeconds
      const stretch = wanted > room ? room / wanted : 1
      add(syllable.vowel, end - wanted * stretch, index, noteFrequencyHz(syllable.note))
      addConsonants(syllable.coda, stretch, index)
      addConsonants(nextOnset, stretch, index)
      start = end
    })
    return start + phrase.restBeats * beat
  }
}
