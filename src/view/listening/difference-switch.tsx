import { printedKey } from '../actions/key-table'
import { useApp, useListen } from '../context/app-context'
import styles from './listening.module.css'

/** Plays the difference of both sides instead of either. */
export function DifferenceSwitch() {
  const { listening } = useApp()
  const difference = useListen(({ heard }) => heard === 'difference')
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
          difference <br className={styles.break} />
          only
        </span>
      </label>
    </div>
  )
}
