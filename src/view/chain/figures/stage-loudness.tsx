import { plain } from '../../../core'
import { useEvidence } from '../../context/app-context'
import { Unseen } from '../../controls/unseen'
import { inWords } from '../../words/in-words'
import styles from './stage-loudness.module.css'

interface StageLoudnessProps {
  readonly stageId: string
}

/** The loudness on the line behind a stage. */
export function StageLoudness({ stageId }: StageLoudnessProps) {
  const evidence = useEvidence((state) => state.evidence?.stages.get(stageId))
  if (!evidence) return null
  const { integratedLufs, loudnessChangeLu } = evidence
  if (integratedLufs === null) return null
  return (
    <span className={styles.loudness} title={`Integrated loudness here: ${changeWords(loudnessChangeLu)}`}>
      <Unseen>then </Unseen>
      {plain(integratedLufs, 1)}
      <span className={styles.unit}> LUFS</span>
    </span>
  )
}

function changeWords(changeLu: number | null): string {
  const printed = changeLu === null ? '0' : inWords(Math.abs(changeLu))
  if (changeLu === null || printed === '0') return 'same as before this stage'
  return `${printed} LU ${changeLu > 0 ? 'louder' : 'quieter'} than before this stage`
}
