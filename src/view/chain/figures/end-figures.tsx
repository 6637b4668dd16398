import { plain } from '../../../core'
import { useEvidence, useTake } from '../../context/app-context'
import { usePendingWords } from '../../context/use-pending-words'
import styles from './end-figures.module.css'

export interface EndFiguresProps {
  /** The take, or what comes out. */
  readonly of: 'take' | 'out'
}

/** The loudness at an end of the chain, and a peak that is above full scale when it comes out. */
export function EndFigures({ of }: EndFiguresProps) {
  const pending = usePendingWords()
  const take = useTake((state) => state.take?.measures)
  const out = useEvidence((state) => state.evidence?.processed.measures)
  const measures = of === 'take' ? take : out
  if (!measures) return pending
  const { integratedLufs, truePeakDbtp } = measures
  return (
    <>
      {integratedLufs === null ? 'too quiet to measure' : `${plain(integratedLufs, 1)} LUFS`}
      {of === 'out' && truePeakDbtp !== null && truePeakDbtp > 0 && (
        <strong
          className={styles.over}
          title="The true peak is above full scale: 16 and 24 bits can clip there."
        >
          peak +{plain(truePeakDbtp, 1)} dBTP
        </strong>
      )}
    </>
  )
}
