import { plain } from '../../core'
import { useEvidence } from '../context/app-context'
import { useGainReduction } from '../context/use-gain-reduction'
import { Unseen } from '../controls/unseen'
import { inWords } from '../words/in-words'
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

/** Gain reduction of a stage right now, while it plays: a figure and a bar; else the maximum over the take. */
export function StageNow({ stageId, index, name }: StageNowProps) {
  const reductionDb = useGainReduction(index)
  const reduction = useEvidence((state) => state.evidence?.stages.get(stageId)?.reduction ?? null)
  if (reductionDb === null)
    return (
      <span className={styles.now}>
        {reduction && (
          <span
            className={styles.most}
            title={`Gain reduction over the whole take: median ${inWords(reduction.medianDb)} dB`}
          >
            {inWords(reduction.maxDb) !== '0' ? `max ${inWords(reduction.maxDb)} dB` : 'no reduction'}
          </span>
        )}
      </span>
    )
  const shown = Math.min(1, reductionDb / MOST_DB)
  return (
    <span className={styles.now}>
      <Unseen>
        <meter
          min={0}
          max={MOST_DB}
          value={shown * MOST_DB}
          aria-label={`${name}, gain reduction now`}
          aria-valuetext={`${plain(reductionDb, 1)} decibels`}
        />
      </Unseen>
      <span className={styles.figure} aria-hidden="true">
        {plain(reductionDb, 1)} dB
      </span>
      <span className={styles.line}>
        <span className={styles.bar} style={{ transform: `scaleX(${shown})` }} />
      </span>
    </span>
  )
}
