import { plain } from '../../core'
import { useListen } from '../context/app-context'
import { MonitorSlider } from '../playback/monitor-slider'
import styles from './monitor.module.css'

/** The monitor volume. It does not affect the delivered file. */
export function Monitor() {
  const monitorDb = useListen((state) => state.monitorDb)
  return (
    <div className={styles.monitor}>
      <span title="Peaks limited to −1 dBFS">monitor {plain(monitorDb, 0)} dB</span>
      <MonitorSlider />
    </div>
  )
}
