/** `fricative` is a hiss that is not a sibilant, such as f. */
export type PhonemeKind =
  | 'vowel'
  | 'voiced-consonant'
  | 'sibilant'
  | 'fricative'
  | 'stop'
  | 'breath'
  | 'silence'

/** The first three resonances of the vocal tract, Hz. */
export type Formants = readonly [number, number, number]

/** Where in the mouth noise is made. */
export type Place = 'alveolar' | 'palatal' | 'labial'

/** How one sound of the language is made. Levels are against the vowels of the same phrase. */
export interface Phoneme {
  readonly kind: PhonemeKind
  readonly formantsHz: Formants
  /** Where a diphthong glides to. */
  readonly glideHz?: Formants
  /** Length when there is time for it; vowels fill what the consonants leave. */
  readonly seconds?: number
  /** Level of the glottal tone, dB; absent when the voice rests. */
  readonly voiceDb?: number
  /** How much wider than a vowel's the resonances are. */
  readonly damping?: number
  readonly noise?: { readonly place: Place; readonly levelDb: number }
}

// Women's formants of G. E. Peterson, H. L. Barney, "Control Methods Used in a Study of the Vowels",
// JASA 24(2), 1952, Table II.
const i: Formants = [310, 2790, 3310]
const I: Formants = [430, 2480, 3070]
const E: Formants = [610, 2330, 2990]
const ae: Formants = [860, 2050, 2850]
const A: Formants = [850, 1220, 2810]
const O: Formants = [590, 920, 2710]
const U: Formants = [470, 1160, 2680]
const V: Formants = [760, 1400, 2780]
const er: Formants = [500, 1640, 1960]
// The neutral vowel as the quarter-wave resonances of an even tube of 15 cm, speed of sound 350 m/s.
const neutral: Formants = [583, 1750, 2917]

// Where the formants point while the mouth is closed at the gums, the lips or the soft palate.
// Common practice in formant synthesis, no source; scaled to a woman's tract.
const atGums: Formants = [350, 2000, 3000]
const atLips: Formants = [350, 1100, 2600]
const atPalate: Formants = [350, 2300, 2900]

const vowel = (formantsHz: Formants, glideHz?: Formants): Phoneme =>
  glideHz ? { kind: 'vowel', formantsHz, glideHz, voiceDb: 0 } : { kind: 'vowel', formantsHz, voiceDb: 0 }

const stop = (formantsHz: Formants, place: Place, seconds: number, levelDb: number): Phoneme => ({
  kind: 'stop',
  formantsHz,
  seconds,
  noise: { place, levelDb },
})

/**
 * The sounds of the song. Levels of s and sh against the vowel are those of A. Jongman, R. Wayland, S. Wong,
 * "Acoustic characteristics of English fricatives", JASA 108(3), 2000 (s -11.0, sh -9.9, f -20.8 dB); lengths
 * are somewhat shorter than their 178 ms, to fit the tune. The rest is common practice, no source.
 */
export const phonemes = {
  i: vowel(i),
  I: vowel(I),
  E: vowel(E),
  ae: vowel(ae),
  A: vowel(A),
  O: vowel(O),
  V: vowel(V),
  '@': { kind: 'vowel', formantsHz: neutral, voiceDb: -2.5 },
  eI: vowel(E, i),
  oU: vowel(O, U),
  aI: vowel(A, i),
  l: { kind: 'voiced-consonant', formantsHz: [360, 1300, 3000], seconds: 0.07, voiceDb: -5, damping: 1.4 },
  r: { kind: 'voiced-consonant', formantsHz: er, seconds: 0.07, voiceDb: -4, damping: 1.2 },
  w: { kind: 'voiced-consonant', formantsHz: [330, 750, 2500], seconds: 0.08, voiceDb: -5, damping: 1.2 },
  m: { kind: 'voiced-consonant', formantsHz: [280, 1100, 2500], seconds: 0.07, voiceDb: -9, damping: 2.5 },
  n: { kind: 'voiced-consonant', formantsHz: [280, 1700, 2800], seconds: 0.07, voiceDb: -9, damping: 2.5 },
  d: {
    kind: 'stop',
    formantsHz: atGums,
    seconds: 0.06,
    voiceDb: -18,
    noise: { place: 'alveolar', levelDb: -14 },
  },
  dh: {
    kind: 'voiced-consonant',
    formantsHz: [350, 1600, 2900],
    seconds: 0.055,
    voiceDb: -9,
    damping: 1.5,
    noise: { place: 'labial', levelDb: -30 },
  },
  z: {
    kind: 'sibilant',
    formantsHz: atGums,
    seconds: 0.09,
    voiceDb: -14,
    damping: 2,
    noise: { place: 'alveolar', levelDb: -13 },
  },
  s: { kind: 'sibilant', formantsHz: atGums, seconds: 0.13, noise: { place: 'alveolar', levelDb: -11 } },
  sh: { kind: 'sibilant', formantsHz: atPalate, seconds: 0.14, noise: { place: 'palatal', levelDb: -9.9 } },
  f: { kind: 'fricative', formantsHz: atLips, seconds: 0.11, noise: { place: 'labial', levelDb: -20.8 } },
  p: stop(atLips, 'labial', 0.09, -12),
  t: stop(atGums, 'alveolar', 0.085, -7),
  k: stop(atPalate, 'palatal', 0.09, -9),
  breath: { kind: 'breath', formantsHz: [650, 1700, 2900], damping: 3 },
  silence: { kind: 'silence', formantsHz: neutral },
} as const satisfies Record<string, Phoneme>

export type PhonemeSymbol = keyof typeof phonemes

/** What is known of the sound written `symbol`. */
export function phoneme(symbol: PhonemeSymbol): Phoneme {
  return phonemes[symbol]
}
