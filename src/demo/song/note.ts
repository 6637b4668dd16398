const semitonesAboveC = { C: 0, D: 2, E: 4, F: 5, G: 7, A: 9, B: 11 } as const

/** A white key of the keyboard by its letter and octave; A4 is the tuning note. */
export type NoteName = `${keyof typeof semitonesAboveC}${1 | 2 | 3 | 4 | 5}`

function isLetter(text: string): text is keyof typeof semitonesAboveC {
  return text in semitonesAboveC
}

/** Frequency of a note, Hz: twelve equal semitones to the octave, A4 = 440 Hz (ISO 16). */
export function noteFrequencyHz(note: NoteName): number {
  const letter = note.charAt(0)
  const semitone = isLetter(letter) ? semitonesAboveC[letter] : 0
  const octave = Number(note.charAt(1))
  return 440 * 2 ** ((semitone - semitonesAboveC.A) / 12 + (octave - 4))
}
