import { plain, type StageDoc } from '../../core'
import { stagesOfWords } from '../../session/comparison/side-words'
import { useChain, useEvidence, useListen } from '../context/app-context'
import styles from './stage-change.module.css'

interface StageChangeProps {
  readonly stage: StageDoc
  /** Whether it stands before the ear. */
  readonly heard: boolean
}

/** What a stage changed: loudness from right before it to right after it. */
export function StageChange({ stage, heard }: StageChangeProps) {
  const evidence = useEvidence((state) => state.evidence?.stages.get(stage.id))
  const scope = useListen((state) => state.scope)
  const ofStored = useChain(({ chain }) => stagesOfWords(scope, chain) !== null)
  if (!heard) return <p className={styles.change}>after the ear, not heard</p>
  if (!stage.on || !evidence) return <p className={styles.change} />
  return (
    <p className={styles.change}>
      <span title="Integrated loudness right after this stage against right before it, over the whole take. What it comes to at the end of the chain stands in the numbers.">
        {ofStored && 'in B '}
        {loudnessWords(evidence.loudnessChangeLu)}
      </span>
    </p>
  )
}

function loudnessWords(changeLu: number | null): string {
  if (changeLu === null) return 'loudness not measurable'
  const printed = plain(Math.abs(changeLu), 1)
  if (Number(printed) === 0) return 'as loud after it'
  return `${printed} LU ${changeLu > 0 ? 'louder' : 'quieter'} after it`
}
