import { plain } from '../../core'
import { useListen, useTake } from '../context/app-context'
import { MonitorSlider } from '../playback/monitor-slider'
import { PlayButton } from '../playback/play-button'
import { printTime } from '../words/time-text'
import styles from './trial.module.css'

/** Play, stop and volume: the same for every choice of a round. */
export function RoundSound() {
  const monitorDb = useListen((state) => state.monitorDb)
  const sampleRate = useTake(({ take }) => take?.sound.sampleRate ?? 1)
  const time = useListen((state) => printTime(state.positionFrame / sampleRate))
  const looping = useListen((state) => state.loop !== null)
  return (
    <div className={styles.sound}>
      <PlayButton />
      <div>
        <span className={styles.time}>{time}</span>
        <br />
        <span className={styles.note}>{looping ? 'in the loop' : 'whole take'}</span>
      </div>
      <div className={styles.volume}>
        <span className={styles.note}>monitor {plain(monitorDb, 0)} dB</span>
        <MonitorSlider />
      </div>
    </div>
  )
}
