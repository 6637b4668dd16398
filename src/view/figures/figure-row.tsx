import type { Measures } from '../../core'
import { FigureLine } from './figure-line'
import styles from './figure-row.module.css'
import { clips, type Figure, printDifference, printFigure } from './figures'

interface FigureRowProps {
  readonly figure: Figure
  /** Null before anything was measured. */
  readonly bypassed: Measures | null
  readonly processed: Measures | null
  readonly heard: 'bypassed' | 'processed'
  /** Whether there is room to print both sides. */
  readonly isWide: boolean
  /** Stands for what is to come. */
  readonly pending: string
}

/** One figure of both sides, drawn and printed, and how far they are apart. */
export function FigureRow({ figure, bypassed, processed, heard, isWide, pending }: FigureRowProps) {
  const { key, label, long = label, unit, differenceUnit, range, mark } = figure
  const [before, behind] = [bypassed?.[key] ?? null, processed?.[key] ?? null]
  const printed = bypassed && printFigure(before, figure, bypassed.durationSeconds)
  const difference = printDifference(before, behind, figure)
  const isHeard = (side: 'bypassed' | 'processed') => (heard === side ? styles.heard : styles.other)
  return (
    <tr className={styles.row}>
      <th scope="row" title={`${long}, ${unit}`}>
        {label}
      </th>
      <td className={isHeard('bypassed')} title={`Line: ${range[0]} to ${range[1]} ${unit}`}>
        <span className={styles.pair}>
          <FigureLine
            range={range}
            bypassed={before}
            processed={behind}
            heard={heard}
            mark={mark}
            isProblem={(value) => clips(value, figure)}
            words={isWide ? undefined : (printed?.text ?? pending)}
          />
          {isWide && <Value {...{ figure, measures: bypassed, pending }} />}
        </span>
      </td>
      <td className={isHeard('processed')}>
        <Value {...{ figure, measures: processed, pending }} />
      </td>
      <td
        className={styles.change}
        title={difference === null ? undefined : `${difference} ${differenceUnit}`}
      >
        {printed ? (difference ?? '') : <Pending text={pending} />}
      </td>
    </tr>
  )
}

interface ValueProps extends Pick<FigureRowProps, 'figure' | 'pending'> {
  readonly measures: Measures | null
}

/** A printed figure: with a word where it clips, in a word where there is none. */
function Value({ figure, measures, pending }: ValueProps) {
  if (!measures) return <Pending text={pending} />
  const value = measures[figure.key]
  const { text, why } = printFigure(value, figure, measures.durationSeconds)
  if (why !== null)
    return (
      <span className={styles.none} title={why}>
        {text}
      </span>
    )
  return clips(value, figure) ? (
    <strong className={styles.clips}>
      {text} <small>clips</small>
    </strong>
  ) : (
    <span className={styles.value}>{text}</span>
  )
}

/** In an element of its own: the figure that comes in its place is another, and has not moved. */
function Pending({ text }: { text: string }) {
  return <i className={styles.pending}>{text}</i>
}
