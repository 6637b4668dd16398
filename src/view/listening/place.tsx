import { useListen, useTake } from '../context/app-context'
import { printTime } from '../words/time-text'
import styles from './listening.module.css'
import { LoopSwitch } from './loop-switch'

/** Where the take plays, and whether a range of it repeats. */
export function Place() {
  const sampleRate = useTake(({ take }) => take?.sound.sampleRate ?? 1)
  const time = useListen((state) => printTime(state.positionFrame / sampleRate))
  return (
    <div className={styles.place}>
      <span className={styles.time}>{time}</span>
      <LoopSwitch />
    </div>
  )
}
