import { plain, type StageDoc, signed } from '../../core'
import { useEvidence } from '../bench-context'
import styles from './stage-change.module.css'

interface StageChangeProps {
  readonly stage: StageDoc
  /** Whether it stands before the ear. */
  readonly heard: boolean
}

/** What a stage changed: loudness, and where it reduces gain the most and the typical reduction. */
export function StageChange({ stage, heard }: StageChangeProps) {
  const evidence = useEvidence((state) => state.evidence?.stages.get(stage.id))
  if (!heard) return <p className={styles.change}>behind the ear, not heard</p>
  if (!stage.on || !evidence) return <p className={styles.change} />
  const { loudnessChangeLu, reduction } = evidence
  return (
    <p className={styles.change}>
      {loudnessChangeLu !== null && (
        <span title="Change of integrated loudness">{signed(loudnessChangeLu, 1)} LU</span>
      )}
      {reduction && (
        <span title="Gain reduction">
          most {plain(reduction.mostDb, 1)}, typical {plain(reduction.typicalDb, 1)} dB
        </span>
      )}
    </p>
  )
}
