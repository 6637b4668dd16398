import { useApp } from '../context/app-context'
import { useFilePickers } from '../context/file-pickers'
import styles from './no-take.module.css'

/** Shown instead of the lanes while no take is open, with ways to open one. */
export function NoTake() {
  const { takes } = useApp()
  const { chooseTake } = useFilePickers()
  return (
    <div className={styles.none}>
      <p>
        No take is open. Open one, or drop a sound file anywhere on this page. Your audio never leaves this
        computer.
      </p>
      <span>
        <button type="button" onClick={chooseTake}>
          Open a take
        </button>
        <button type="button" onClick={() => void takes.openDemo()}>
          Try the demo
        </button>
      </span>
    </div>
  )
}
