const NAMES = ['C', 'C♯', 'D', 'D♯', 'E', 'F', 'F♯', 'G', 'G♯', 'A', 'A♯', 'B'] as const

/** Standard tuning frequency of the note A in the treble stave (ISO 16:1975), and its number, 12 to the octave from C0. */
const A4 = { hz: 440, number: 57 }

/** The note of equal temperament nearest to a frequency, with its octave: A4 for 440 Hz, C4 for 261.6 Hz. */
export function noteName(hz: number): string {
  const number = Math.round(A4.number + 12 * Math.log2(hz / A4.hz))
  const octave = Math.floor(number / 12)
  return `${NAMES[number - 12 * octave] ?? ''}${octave}`
}
