import { plain } from '../../../core'
import { useEvidence } from '../../context/app-context'
import { useGainReduction } from '../../context/use-gain-reduction'
import { Unseen } from '../../controls/unseen'
import { inWords } from '../../words/in-words'
import styles from './stage-now.module.css'

/** The bar is full at this much, dB. */
const MOST_DB = 24

interface StageNowProps {
  readonly stageId: string
  /** Position of the stage in the chain, from 0. */
  readonly index: number
  /** Its number and kind. */
  readonly name: string
  /** Whether the figures that are known are those of this stage. */
  readonly measured: boolean
}

/** Gain reduction of a stage as a bar: right now while it plays, with a mark at its maximum over the take; else that. */
export function StageNow({ stageId, index, name, measured }: StageNowProps) {
  const nowDb = useGainReduction(index)
  const reduction = useEvidence((state) => state.evidence?.stages.get(stageId)?.reduction ?? null)
  const max = measured ? reduction : null
  const shownDb = nowDb ?? max?.maxDb ?? 0
  return (
    <span className={styles.now}>
      <span className={styles.track}>
        <span className={styles.bar} style={{ transform: `scaleX(${shareOf(shownDb)})` }} />
        {nowDb !== null && max && (
          <span className={styles.max} style={{ insetInlineStart: `${shareOf(max.maxDb) * 100}%` }} />
        )}
      </span>
      {nowDb === null ? (
        <span
          className={styles.words}
          title={max ? `Gain reduction over the whole take: median ${inWords(max.medianDb)} dB` : undefined}
        >
          {max && (inWords(max.maxDb) === '0' ? 'no reduction' : `max ${inWords(max.maxDb)} dB`)}
        </span>
      ) : (
        <span className={styles.words}>
          <Unseen>
            <meter
              min={0}
              max={MOST_DB}
              value={Math.min(nowDb, MOST_DB)}
              aria-label={`${name}, gain reduction now`}
              aria-valuetext={`${plain(nowDb, 1)} decibels`}
            />
          </Unseen>
          <span aria-hidden="true">{plain(nowDb, 1)} dB</span>
        </span>
      )}
    </span>
  )
}

function shareOf(reductionDb: number): number {
  return Math.min(1, reductionDb / MOST_DB)
}
