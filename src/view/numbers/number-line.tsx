import type { Measures } from '../../core'
import { Unseen } from '../controls/unseen'
import { DIGITAL_SILENCE, NO_SIBILANTS, NOT_MEASURABLE } from '../words/missing-figures'
import { type Figure, printDifference, printFigure } from './figures'
import styles from './number-line.module.css'

interface NumberLineProps {
  readonly figure: Figure
  /** Null before anything was measured. */
  readonly bypassed: Measures | null
  readonly processed: Measures | null
  /** Whether they are to come. */
  readonly coming: boolean
}

/** One figure of both sides, and how far they are apart. */
export function NumberLine({ figure, bypassed, processed, coming }: NumberLineProps) {
  const { key, label, unit, differenceUnit } = figure
  const pending = coming && <Pending />
  const measured = bypassed && processed
  const difference = measured && printDifference(bypassed[key], processed[key], key)
  return (
    <tr className={styles.line}>
      <th scope="row">
        {label}, {unit}
      </th>
      <td className={styles.bypassed}>
        {bypassed ? <Value text={printFigure(bypassed[key], key)} /> : pending}
      </td>
      <td className={styles.processed}>
        {processed ? <Value text={printFigure(processed[key], key)} /> : pending}
      </td>
      <td title={difference ? `${difference} ${differenceUnit}` : undefined}>
        {measured ? (difference ?? '') : pending}
      </td>
    </tr>
  )
}

/** A figure; where there is none, in words that take no more room. */
function Value({ text }: { text: string }) {
  if (text === NOT_MEASURABLE || text === NO_SIBILANTS)
    return (
      <span className={styles.none} title={text}>
        <span aria-hidden="true">–</span>
        <Unseen>{text}</Unseen>
      </span>
    )
  return text === DIGITAL_SILENCE ? <span className={styles.none}>{text}</span> : text
}

/** As high as a figure, and quiet. */
function Pending() {
  return <span className={styles.none}>…</span>
}
