import { printedKey } from '../actions/key-table'
import { useApp, useListen } from '../context/app-context'
import styles from './listening.module.css'

/** Hears only what the stage or the chain takes away, or in what two kept versions differ. */
export function DifferenceSwitch() {
  const { listening } = useApp()
  const difference = useListen(({ heard }) => heard === 'difference')
  const ofKept = useListen(({ scope }) => scope.kind === 'snapshots')
  return (
    <div className={styles.pair}>
      <label
        className={`${styles.check} ${styles.difference}`}
        title={`Plays processed minus bypassed instead of a side, 6 dB lower: key ${printedKey('difference')}. ${printedKey('side')} goes back to a side.`}
      >
        <input
          type="checkbox"
          checked={difference}
          onChange={(event) => listening.setDifference(event.target.checked)}
        />
        <span>
          only what <br className={styles.break} />
          {ofKept ? 'differs' : 'was removed'}
        </span>
      </label>
    </div>
  )
}
