/** Marks that embed, override or isolate a direction of writing (Unicode Standard Annex 9, 2.1 to 2.5), paired or not. */
const DIRECTION_MARKS = /[\u202A-\u202E\u2066-\u2069]/g

const FIRST_STRONG_ISOLATE = '\u2068'
const POP_DIRECTIONAL_ISOLATE = '\u2069'

/** A file's name as it is shown: without marks that could turn the text around it, and in one line. */
export function shownName(name: string): string {
  return name.replace(DIRECTION_MARKS, '').replace(/\p{Cc}/gu, ' ')
}

/** A file's name for the middle of a sentence: whatever it is written in, the sentence keeps its order. */
export function isolated(name: string): string {
  return `${FIRST_STRONG_ISOLATE}${shownName(name)}${POP_DIRECTIONAL_ISOLATE}`
}
