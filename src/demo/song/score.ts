import type { NoteName } from './note'
import type { PhonemeSymbol } from './phonemes'

/** One syllable on one note; its vowel starts on the beat, so the consonants before it come early. */
export interface Syllable {
  readonly text: string
  readonly onset: readonly PhonemeSymbol[]
  readonly vowel: PhonemeSymbol
  readonly coda: readonly PhonemeSymbol[]
  readonly note: NoteName
  readonly beats: number
}

export interface Phrase {
  readonly words: string
  /** Vocal effort, 0 soft to 1 full: the harder the voice works, the brighter it is. */
  readonly effort: number
  readonly syllables: readonly Syllable[]
  /** Rest after the last note. */
  readonly restBeats: number
}

export interface Chord {
  readonly bass: NoteName
  readonly notes: readonly NoteName[]
  readonly beats: number
}

export interface Song {
  readonly title: string
  readonly tempoBpm: number
  /** Beats before the first bar. */
  readonly leadInBeats: number
  readonly phrases: readonly Phrase[]
  readonly chords: readonly Chord[]
  readonly durationSeconds: number
}

const sung = (
  text: string,
  onset: readonly PhonemeSymbol[],
  vowel: PhonemeSymbol,
  coda: readonly PhonemeSymbol[],
  note: NoteName,
  beats: number,
): Syllable => ({ text, onset, vowel, coda, note, beats })

const chord = (bass: NoteName, notes: readonly NoteName[], beats: number): Chord => ({ bass, notes, beats })

/** The song of the demo, in C: eight bars of four beats after two beats of count-in. */
export const song: Song = {
  title: 'Salt on the Steps',
  tempoBpm: 84,
  leadInBeats: 2,
  durationSeconds: 25,
  phrases: [
    {
      words: 'Salt on the steps, and the street is asleep',
      effort: 0.5,
      restBeats: 1,
      syllables: [
        sung('salt', ['s'], 'O', ['l', 't'], 'C4', 1),
        sung('on', [], 'A', ['n'], 'D4', 0.5),
        sung('the', ['dh'], '@', [], 'E4', 0.5),
        sung('steps', ['s', 't'], 'E', ['p', 's'], 'G4', 1),
        sung('and', [], 'ae', ['n', 'd'], 'E4', 0.5),
        sung('the', ['dh'], '@', [], 'D4', 0.5),
        sung('street', ['s', 't', 'r'], 'i', ['t'], 'E4', 0.5),
        sung('is', [], 'I', ['z'], 'D4', 0.5),
        sung('a', [], '@', [], 'C4', 0.5),
        sung('sleep', ['s', 'l'], 'i', ['p'], 'A3', 1.5),
      ],
    },
    {
      words: 'Pale little stars sit still on the sea',
      effort: 0.35,
      restBeats: 1,
      syllables: [
        sung('pale', ['p'], 'eI', ['l'], 'A4', 1),
        sung('lit', ['l'], 'I', [], 'A4', 0.5),
        sung('tle', ['t'], '@', ['l'], 'G4', 0.5),
        sung('stars', ['s', 't'], 'A', ['r', 'z'], 'F4', 1.5),
        sung('sit', ['s'], 'I', ['t'], 'E4', 0.5),
        sung('still', ['s', 't'], 'I', ['l'], 'D4', 0.5),
        sung('on', [], 'A', ['n'], 'D4', 0.5),
        sung('the', ['dh'], '@', [], 'C4', 0.5),
        sung('sea', ['s'], 'i', [], 'B3', 1.5),
      ],
    },
    {
      words: 'So shake off the dust, let the tide in',
      effort: 1,
      restBeats: 1.5,
      syllables: [
        sung('so', ['s'], 'oU', [], 'E4', 0.5),
        sung('shake', ['sh'], 'eI', ['k'], 'A4', 1),
        sung('off', [], 'O', ['f'], 'G4', 0.5),
        sung('the', ['dh'], '@', [], 'A4', 0.5),
        sung('dust', ['d'], 'V', ['s', 't'], 'C5', 1.5),
        sung('let', ['l'], 'E', ['t'], 'C5', 0.5),
        sung('the', ['dh'], '@', [], 'A4', 0.5),
        sung('tide', ['t'], 'aI', ['d'], 'C5', 1),
        sung('in', [], 'I', ['n'], 'A4', 0.5),
      ],
    },
    {
      words: 'Stay till the sun finds the shore that we lost',
      effort: 0.2,
      restBeats: 0.5,
      syllables: [
        sung('stay', ['s', 't'], 'eI', [], 'G4', 1),
        sung('till', ['t'], 'I', ['l'], 'F4', 0.5),
        sung('the', ['dh'], '@', [], 'E4', 0.5),
        sung('sun', ['s'], 'V', ['n'], 'D4', 1),
        sung('finds', ['f'], 'aI', ['n', 'd', 'z'], 'E4', 1),
        sung('the', ['dh'], '@', [], 'D4', 0.5),
        sung('shore', ['sh'], 'O', ['r'], 'D4', 0.5),
        sung('that', ['dh'], 'ae', ['t'], 'B3', 0.5),
        sung('we', ['w'], 'i', [], 'D4', 0.5),
        sung('lost', ['l'], 'O', ['s', 't'], 'C4', 1.5),
      ],
    },
  ],
  chords: [
    chord('C2', ['E3', 'G3', 'C4'], 4),
    chord('A1', ['E3', 'A3', 'C4'], 4),
    chord('F2', ['F3', 'A3', 'C4'], 4),
    chord('G2', ['D3', 'G3', 'B3'], 4),
    chord('A1', ['E3', 'A3', 'C4'], 4),
    chord('F2', ['F3', 'A3', 'C4'], 4),
    chord('C2', ['E3', 'G3', 'C4'], 4),
    chord('G1', ['D3', 'G3', 'B3'], 2),
    chord('C2', ['E3', 'G3', 'C4'], 2),
  ],
}

/** Length of one beat of `of`, seconds. */
export function beatSeconds(of: Song): number {
  return 60 / of.tempoBpm
}
