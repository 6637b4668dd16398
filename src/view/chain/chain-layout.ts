/**
 * How the cards stand: in lines with all that a card says, in lines and small, or, on a narrow screen, in one line that
 * scrolls sideways.
 */
export type ChainForm = 'cards' | 'compact' | 'row'

export interface ChainLayout {
  readonly form: ChainForm
  /** Cards side by side. */
  readonly columns: number
}

/** Where a card stands, from 0. */
export interface CardPlace {
  readonly column: number
  readonly line: number
  /** First of a line that goes on from the one above. */
  readonly continues: boolean
  /** Last of a line that goes on in the one beneath. */
  readonly breaks: boolean
}

/** Widths are in rem: larger text is laid out as a narrower page. */
const WIDTH_OF_LINES = 46
/** What the take and the output stand in, at both ends of a line. */
const WIDTH_OF_ENDS = 9.5
/** A card, and the piece of the line behind it. */
const LEAST_WIDTH: Readonly<Record<'cards' | 'compact', number>> = { cards: 13, compact: 9.75 }
/** With more stages cards are small, so that the chain does not push the rest out of reach. */
const MOST_CARDS = 12

/** The form for so many stages on a page of so many rem, in lines that are as long as one another. */
export function chainLayout(count: number, widthRem: number): ChainLayout {
  if (widthRem < WIDTH_OF_LINES) return { form: 'row', columns: Math.max(1, count) }
  const form = count > MOST_CARDS ? 'compact' : 'cards'
  const fitting = Math.max(1, Math.floor((widthRem - WIDTH_OF_ENDS) / LEAST_WIDTH[form]))
  const lines = Math.max(1, Math.ceil(count / fitting))
  return { form, columns: Math.max(1, Math.ceil(count / lines)) }
}

/** Where the stage at `index` of `count` stands. */
export function cardPlace(index: number, count: number, { columns }: ChainLayout): CardPlace {
  const column = index % columns
  return {
    column,
    line: Math.floor(index / columns),
    continues: column === 0 && index > 0,
    breaks: column === columns - 1 && index < count - 1,
  }
}
