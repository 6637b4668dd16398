import { excessDb } from '../../session/delivery'
import { useApp, useDelivery } from '../context/app-context'
import { inWords } from '../words/in-words'
import styles from './deliver.module.css'
import { clippingWords } from './delivery-words'

/** Says before anything is saved that the file would clip, and how much, with what helps in one press. */
export function Clipping() {
  const { deliveries } = useApp()
  const levels = useDelivery((state) => state.levels)
  const format = useDelivery((state) => state.format)
  const words = levels && clippingWords(levels, format)
  if (!words) return <div role="status" />
  const { truePeakDbtp, samplesOver } = levels
  // A peak that only just does not fit the integers is not above full scale.
  const byDb = Math.max(0.1, excessDb(truePeakDbtp ?? 0))
  const isFloat = format === 'float32'
  return (
    <div role="status" className={isFloat ? styles.clipping : `${styles.clipping} ${styles.problem}`}>
      <p>{words}</p>
      <div className={styles.remedies}>
        <button type="button" onClick={() => deliveries.lower(byDb)}>
          Lower the output by {inWords(byDb)} dB
        </button>
        {!isFloat && samplesOver > 0 && (
          <button type="button" onClick={() => deliveries.setFormat('float32')}>
            Choose 32-bit float
          </button>
        )}
      </div>
    </div>
  )
}
