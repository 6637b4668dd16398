import type { StageDoc } from '../../core'
import { stagesOfWords } from '../../session/comparison/side-words'
import { useChain, useEvidence, useListen } from '../context/app-context'
import { inWords } from '../words/in-words'
import styles from './stage-change.module.css'

interface StageChangeProps {
  readonly stage: StageDoc
  /** Whether it comes before the listening point. */
  readonly heard: boolean
}

/** How a stage changes the loudness: before it against after it. */
export function StageChange({ stage, heard }: StageChangeProps) {
  const evidence = useEvidence((state) => state.evidence?.stages.get(stage.id))
  const scope = useListen((state) => state.scope)
  const ofStored = useChain(({ chain }) => stagesOfWords(scope, chain) !== null)
  if (!heard) return <p className={styles.change}>after the listening point</p>
  if (!stage.on || !evidence) return <p className={styles.change} />
  return (
    <p className={styles.change}>
      <span title="Integrated loudness after this stage against before it, over the whole take. The numbers show what that comes to at the end of the chain.">
        {ofStored && 'in B: '}
        {loudnessWords(evidence.loudnessChangeLu)}
      </span>
    </p>
  )
}

function loudnessWords(changeLu: number | null): string {
  if (changeLu === null) return 'loudness not measurable'
  const printed = inWords(Math.abs(changeLu))
  if (printed === '0') return 'same loudness'
  return `${printed} LU ${changeLu > 0 ? 'louder' : 'quieter'}`
}
