import { frameCount } from '../../core'
import { printedKey } from '../actions/key-table'
import { useApp, useListen, useTake } from '../context/app-context'
import styles from './listening.module.css'

/** Whether a range of the take repeats. */
export function LoopSwitch() {
  const { listening } = useApp()
  const hasTake = useTake(({ take }) => take !== null && frameCount(take.sound) > 0)
  const looping = useListen((state) => state.loop !== null)
  return (
    <button
      type="button"
      className={styles.loop}
      data-look="bare"
      aria-pressed={looping}
      disabled={!hasTake}
      title={`Loop on, off: key ${printedKey('loop')}`}
      onClick={() => listening.switchLoop()}
    >
      loop {looping ? 'on' : 'off'}
    </button>
  )
}
