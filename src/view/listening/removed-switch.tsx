import { useBench, useListen } from '../bench-context'
import styles from './listening.module.css'

/** Hears only what the stage or the chain takes away, or in what two kept versions differ. */
export function RemovedSwitch() {
  const { listening } = useBench()
  const removed = useListen(({ heard }) => heard === 'removed')
  const ofKept = useListen(({ scope }) => scope.kind === 'kept')
  return (
    <div className={styles.pair}>
      <label
        className={`${styles.check} ${styles.removed}`}
        title="In place of both sides, 6 dB lower; X goes back to a side: key R"
      >
        <input
          type="checkbox"
          checked={removed}
          onChange={(event) => listening.setRemoved(event.target.checked)}
        />
        <span>
          only what <br className={styles.break} />
          {ofKept ? 'differs' : 'was removed'}
        </span>
      </label>
    </div>
  )
}
