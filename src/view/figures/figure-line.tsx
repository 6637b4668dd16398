import styles from './figure-line.module.css'
import { positionIn } from './figures'

interface FigureLineProps {
  readonly range: readonly [from: number, to: number]
  /** Null where there is none. */
  readonly bypassed: number | null
  readonly processed: number | null
  /** The side that is heard: its dot is solid and in front. */
  readonly heard: 'bypassed' | 'processed'
  /** A value to be marked. */
  readonly mark?: number | undefined
  /** Marked as something to be put right. */
  readonly isProblem?: boolean
  /** What it says to those who cannot see it; nothing where that is printed beside it. */
  readonly words?: string | undefined
}

/** A figure of both sides as two dots on a line: solid for the one that is heard, hollow for the other. */
export function FigureLine({
  range,
  bypassed,
  processed,
  heard,
  mark,
  isProblem = false,
  words,
}: FigureLineProps) {
  const at = (value: number) => `${(EDGE + (100 - 2 * EDGE) * positionIn(range, value)).toFixed(1)}%`
  const [solid, hollow] = heard === 'processed' ? [processed, bypassed] : [bypassed, processed]
  return (
    <svg
      className={styles.picture}
      role="img"
      aria-hidden={words === undefined}
      aria-label={words}
      data-problem={isProblem}
    >
      {words !== undefined && <title>{words}</title>}
      <line className={styles.scale} x1="0" x2="100%" y1="50%" y2="50%" />
      {mark !== undefined && <line className={styles.mark} x1={at(mark)} x2={at(mark)} y1="15%" y2="85%" />}
      {bypassed !== null && processed !== null && (
        <line className={styles.change} x1={at(bypassed)} x2={at(processed)} y1="50%" y2="50%" />
      )}
      {hollow !== null && <circle className={styles.hollow} cx={at(hollow)} cy="50%" />}
      {solid !== null && <circle className={styles.solid} cx={at(solid)} cy="50%" />}
    </svg>
  )
}

/** Room for half a dot at either end, percent of the width. */
const EDGE = 6
