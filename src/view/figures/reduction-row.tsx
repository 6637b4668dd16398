import { numberedStage, plain, type ReductionSummary, type StageDoc } from '../../core'
import { useStageColour } from '../context/app-context'
import { StageGlyph } from '../controls/stage-glyph'
import { REDUCTION_RANGE } from './figures'
import { ReductionLine } from './reduction-line'
import styles from './reduction-row.module.css'

interface ReductionRowProps {
  readonly stage: StageDoc
  /** Position in the chain, from 0. */
  readonly index: number
  /** Null before it is known. */
  readonly reduction: ReductionSummary | null
  /** Stands for what is to come. */
  readonly pending: string
}

/** How far a stage of the processed side reduces gain: its maximum, and its median while it reduces. */
export function ReductionRow({ stage, index, reduction, pending }: ReductionRowProps) {
  const colour = useStageColour(stage.id)
  return (
    <tr className={styles.row}>
      <th scope="row" aria-label={`${numberedStage(index, stage.kind)}, gain reduction`}>
        <span className={styles.name} title={`Gain reduction of ${numberedStage(index, stage.kind)}, dB`}>
          <StageGlyph colour={colour} index={index} on /> reduction
        </span>
      </th>
      <td title={`Line: ${REDUCTION_RANGE[0]} to ${REDUCTION_RANGE[1]} dB; tick: median`}>
        <ReductionLine reduction={reduction} colour={colour} />
      </td>
      <td colSpan={2}>
        {reduction ? (
          <>
            max <strong>{plain(reduction.maxDb, 1)}</strong>, median {plain(reduction.medianDb, 1)}
          </>
        ) : (
          pending
        )}
      </td>
    </tr>
  )
}
