import { deliveredMeasures } from '../../session/delivered-measures'
import { useChain, useEvidence } from '../context/app-context'
import styles from './deliver.module.css'
import { fileFigures, OTHER_CHAIN_WORDS } from './delivery-words'

/** Loudness and peak of the file; or that something else is heard. */
export function FileFigures() {
  const chain = useChain((state) => state.chain)
  const measures = useEvidence(({ evidence }) => deliveredMeasures(evidence, chain))
  const isSettled = useEvidence(({ evidence, working }) => evidence !== null && working === null)
  return (
    <p className={styles.figures}>{measures || !isSettled ? fileFigures(measures) : OTHER_CHAIN_WORDS}</p>
  )
}
