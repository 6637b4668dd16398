import type { Measures } from '../../core'
import { type Figure, NOT_MEASURABLE, printDifference, printFigure } from './figures'
import styles from './number-line.module.css'

interface NumberLineProps {
  readonly figure: Figure
  /** Null before anything was measured. */
  readonly without: Measures | null
  readonly with: Measures | null
}

/** One figure of both sides, and how far they are apart. */
export function NumberLine({ figure, without, with: withSide }: NumberLineProps) {
  const { key, label, unit, differenceUnit } = figure
  const measured = without && withSide
  const difference = measured && printDifference(without[key], withSide[key])
  return (
    <tr className={styles.line}>
      <th scope="row">
        {label}, {unit}
      </th>
      <td className={styles.without}>{without ? <Value value={without[key]} /> : <Pending />}</td>
      <td className={styles.with}>{withSide ? <Value value={withSide[key]} /> : <Pending />}</td>
      <td title={difference ? `${difference} ${differenceUnit}` : undefined}>
        {measured ? (difference ?? '') : <Pending />}
      </td>
    </tr>
  )
}

function Value({ value }: { value: number | null }) {
  const text = printFigure(value)
  return text === NOT_MEASURABLE ? <span className={styles.none}>{text}</span> : text
}

/** As high as a figure, and quiet. */
function Pending() {
  return <span className={styles.none}>…</span>
}
