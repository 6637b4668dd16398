import { deliveredMeasures } from '../../state/delivered-measures'
import { useChain, useEvidence } from '../bench-context'
import styles from './deliver.module.css'
import { fileFigures } from './delivery-words'

/** How loud the file will be, and its peak. */
export function FileFigures() {
  const chain = useChain((state) => state.chain)
  const measures = useEvidence(({ evidence }) => deliveredMeasures(evidence, chain))
  return <p className={styles.figures}>{fileFigures(measures)}</p>
}
