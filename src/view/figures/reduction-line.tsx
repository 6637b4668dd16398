import type { ReductionSummary } from '../../core'
import { positionIn, REDUCTION_RANGE } from './figures'
import styles from './reduction-line.module.css'
import { ScaledLine } from './scaled-line'

interface ReductionLineProps {
  /** Null before it is known. */
  readonly reduction: ReductionSummary | null
  /** The stage's own, as styles take it. */
  readonly colour: string
}

/** Gain reduction as a bar from none to its maximum, with a tick at its median. Printed beside it. */
export function ReductionLine({ reduction, colour }: ReductionLineProps) {
  const at = (db: number) => `${(100 * positionIn(REDUCTION_RANGE, db)).toFixed(1)}%`
  return (
    <ScaledLine style={{ '--stage': colour }}>
      {reduction && (
        <>
          <line className={styles.bar} x1="0" x2={at(reduction.maxDb)} y1="50%" y2="50%" />
          <line
            className={styles.median}
            x1={at(reduction.medianDb)}
            x2={at(reduction.medianDb)}
            y1="10%"
            y2="90%"
          />
        </>
      )}
    </ScaledLine>
  )
}
