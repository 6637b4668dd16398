import styles from './figure-line.module.css'
import { positionIn } from './figures'
import { ScaledLine } from './scaled-line'

interface FigureLineProps {
  readonly range: readonly [from: number, to: number]
  /** Null where there is none. */
  readonly bypassed: number | null
  readonly processed: number | null
  /** The side that is heard: its dot is solid and in front. */
  readonly heard: 'bypassed' | 'processed'
  /** A value to be marked. */
  readonly mark?: number | undefined
  /** Whether a value is something to be put right. */
  isProblem(value: number): boolean
  /** What it says to those who cannot see it; nothing where that is printed beside it. */
  readonly words?: string | undefined
}

/** A figure of both sides as two dots on a line: solid for the one that is heard, hollow for the other. */
export function FigureLine({ range, bypassed, processed, heard, mark, isProblem, words }: FigureLineProps) {
  const at = (value: number) => `${(EDGE + (100 - 2 * EDGE) * positionIn(range, value)).toFixed(1)}%`
  const dot = (look: string | undefined, value: number | null) =>
    value !== null && <circle className={look} cx={at(value)} cy="50%" data-problem={isProblem(value)} />
  const [solid, hollow] = heard === 'processed' ? [processed, bypassed] : [bypassed, processed]
  return (
    <ScaledLine words={words}>
      {mark !== undefined && <line className={styles.mark} x1={at(mark)} x2={at(mark)} y1="15%" y2="85%" />}
      {bypassed !== null && processed !== null && (
        <line className={styles.change} x1={at(bypassed)} x2={at(processed)} y1="50%" y2="50%" />
      )}
      {dot(styles.hollow, hollow)}
      {dot(styles.solid, solid)}
    </ScaledLine>
  )
}

/** Room for half a dot at either end, percent of the width. */
const EDGE = 6
