import { plain } from '../../core'
import { useEvidence } from '../context/app-context'
import { useGainReduction } from '../context/use-gain-reduction'
import { Unseen } from '../controls/unseen'
import styles from './stage-now.module.css'

/** The line is full at this much, dB. */
const MOST_DB = 24

interface StageNowProps {
  readonly stageId: string
  /** Position of the stage in the chain, from 0. */
  readonly index: number
  /** Its number and kind. */
  readonly name: string
}

/** What a stage holds back just now, while it plays: a figure, and a line as long; else the most over the take. */
export function StageNow({ stageId, index, name }: StageNowProps) {
  const heldDb = useGainReduction(index)
  const reduction = useEvidence((state) => state.evidence?.stages.get(stageId)?.reduction ?? null)
  if (heldDb === null)
    return (
      <span className={styles.now}>
        {reduction && (
          <span
            className={styles.most}
            title={`Gain reduction over the whole take: typical ${plain(reduction.medianDb, 1)} dB`}
          >
            {Number(plain(reduction.maxDb, 1)) > 0 ? `most ${plain(reduction.maxDb, 1)} dB` : 'holds nothing'}
          </span>
        )}
      </span>
    )
  const shown = Math.min(1, heldDb / MOST_DB)
  return (
    <span className={styles.now}>
      <Unseen>
        <meter
          min={0}
          max={MOST_DB}
          value={shown * MOST_DB}
          aria-label={`${name}, gain reduction now`}
          aria-valuetext={`${plain(heldDb, 1)} decibels`}
        />
      </Unseen>
      <span className={styles.figure} aria-hidden="true">
        now {plain(heldDb, 1)} dB
      </span>
      <span className={styles.line}>
        <span className={styles.held} style={{ transform: `scaleX(${shown})` }} />
      </span>
    </span>
  )
}
