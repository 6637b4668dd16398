import { frameCount } from '../../core'
import { printedKey } from '../actions/key-table'
import { useApp, useListen, useTake } from '../context/app-context'
import { printTime } from '../words/time-text'
import styles from './listening.module.css'

/** Where the take plays, and whether a stretch of it repeats. */
export function Place() {
  const { listening } = useApp()
  const sampleRate = useTake(({ take }) => take?.sound.sampleRate ?? 1)
  const hasTake = useTake(({ take }) => take !== null && frameCount(take.sound) > 0)
  const time = useListen((state) => printTime(state.positionFrame / sampleRate))
  const looping = useListen((state) => state.loop !== null)
  return (
    <div className={styles.pair}>
      <span className={styles.time}>{time}</span>
      <button
        type="button"
        className={styles.small}
        aria-pressed={looping}
        disabled={!hasTake}
        title={`Loop on, off: key ${printedKey('loop')}`}
        onClick={() => listening.switchLoop()}
      >
        loop {looping ? 'on' : 'off'}
      </button>
    </div>
  )
}
