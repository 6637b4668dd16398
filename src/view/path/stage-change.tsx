import { plain, type StageDoc, signed } from '../../core'
import { useEvidence } from '../bench-context'
import styles from './stage-change.module.css'

interface StageChangeProps {
  readonly stage: StageDoc
  /** Whether it stands before the ear. */
  readonly heard: boolean
}

/** What a stage changed: loudness from right before it to right after it, and where it reduces gain, by how much most. */
export function StageChange({ stage, heard }: StageChangeProps) {
  const evidence = useEvidence((state) => state.evidence?.stages.get(stage.id))
  if (!heard) return <p className={styles.change}>after the ear, not heard</p>
  if (!stage.on || !evidence) return <p className={styles.change} />
  const { loudnessChangeLu, reduction } = evidence
  return (
    <p className={styles.change}>
      {loudnessChangeLu !== null && (
        <span title="Integrated loudness right after this stage against right before it, over the whole take. What it comes to at the end of the chain stands in the numbers.">
          {signed(loudnessChangeLu, 1)} LU right after it
        </span>
      )}
      {reduction && (
        <span title={`Gain reduction over the whole take: typical ${plain(reduction.typicalDb, 1)} dB`}>
          most {plain(reduction.mostDb, 1)} dB
        </span>
      )}
    </p>
  )
}
