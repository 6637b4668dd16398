import { useTake } from '../context/app-context'
import { measureFacts } from './facts'
import styles from './header.module.css'

/** What was measured of the unprocessed take. Its line is there before its figures, so that nothing moves. */
export function MeasuredFacts() {
  const measures = useTake(({ take }) => take?.measures ?? null)
  const replaced = useTake(({ take }) => take?.replacedSamples ?? 0)
  return (
    <dl className={styles.measures} aria-label="The unprocessed take">
      {measures &&
        measureFacts(measures).map(({ label, value, worth }) => (
          <div key={label} className={worth ? styles.worth : undefined}>
            <dt>{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      {replaced > 0 && (
        <div className={styles.worth}>
          <dt>Invalid samples (NaN/Inf) silenced</dt>
          <dd>{replaced}</dd>
        </div>
      )}
    </dl>
  )
}
