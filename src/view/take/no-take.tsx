import { useApp } from '../context/app-context'
import { useFilePickers } from '../context/file-pickers'
import styles from './no-take.module.css'

/** Shown instead of the lanes while no take is open, with ways to open one. */
export function NoTake() {
  const { takes } = useApp()
  const { chooseTake } = useFilePickers()
  return (
    <div className={styles.none}>
      <p className={styles.say}>No take is open</p>
      <button type="button" className={styles.open} onClick={chooseTake}>
        Open a take
      </button>
      <p>
        or drop a sound file on this page, or{' '}
        <button type="button" data-look="link" onClick={() => void takes.openDemo()}>
          try the demo
        </button>
        . Your audio never leaves this computer.
      </p>
    </div>
  )
}
