import { useDelivery } from '../context/app-context'
import styles from './deliver.module.css'
import { clippedWarning, ditherNews } from './delivery-words'

/** How the delivery went. Read out when it changes. */
export function DeliveryNews() {
  const delivered = useDelivery((state) => state.delivered)
  const problem = useDelivery((state) => state.problem)
  const warning = delivered && clippedWarning(delivered.clippedSamples)
  return (
    <div role="status" className={styles.news}>
      {delivered && (
        <p>
          Saved as <bdi>{delivered.fileName}</bdi>. {ditherNews(delivered)}
        </p>
      )}
      {warning && <p className={styles.problem}>{warning}</p>}
      {problem && <p className={styles.problem}>{problem}</p>}
    </div>
  )
}
